/** Small types that the sections of a frame file share. */

export type Vec2 = readonly [x: number, y: number];
export type Vec3 = readonly [x: number, y: number, z: number];

/** Where mirrored copies go: mirror in y, in x, in both. */
export type Copies = "none" | "left and right" | "front and rear" | "all four corners";
export type Side = "above" | "below";
export type DofName = "x" | "y" | "z" | "rx" | "ry" | "rz";
/** Springs by direction: N/m for x, y, z and N m/rad for rx, ry, rz. */
export type Stiffness = Readonly<Partial<Record<DofName, number>>>;
export type Named<T> = Readonly<Record<string, T>>;
