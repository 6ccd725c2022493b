/** Functions of the three-dimensional pictures; each is in the page under its own name. */

import type { Theme } from "../palette.ts";
import type {
  Area,
  Camera,
  Canvas2d,
  DrawnFrame,
  Look,
  MotionSteps,
  Overlay,
  PackedMotion,
  Paint,
  Picked,
  Picture,
  Projected,
  Raster,
  Rgb,
  Scene,
  SceneMotion,
} from "./viewer-types.ts";

type Unpack = (text: string) => number[];
type Move = (scene: Scene, moves: ArrayLike<number>, turns: ArrayLike<number>) => SceneMotion;

export interface ViewerTools {
  readonly unpackIntegers: Unpack;
  readonly readScene: (frame: DrawnFrame, unpack: Unpack) => Scene;
  readonly sceneMotion: Move;
  readonly readMotion: (
    scene: Scene,
    packed: PackedMotion,
    steps: MotionSteps,
    unpack: Unpack,
    motion: Move,
  ) => SceneMotion;
  readonly project: (
    scene: Scene,
    camera: Camera,
    width: number,
    height: number,
    room: number,
    move?: Float64Array,
    size?: number,
  ) => Projected;
  readonly newRaster: (width: number, height: number, memory?: ArrayBuffer) => Raster;
  readonly shadeTable: (colours: readonly Rgb[], dimmest: number) => Uint32Array;
  readonly rasterise: (
    raster: Raster,
    scene: Scene,
    seen: Projected,
    paint: Paint,
    ratio?: number,
  ) => void;
  readonly inSight: (
    raster: Raster,
    seen: Pick<Projected, "x" | "y" | "depth">,
    pairs: ArrayLike<number>,
    before: number,
  ) => number[];
  readonly edgesOf: (
    scene: Scene,
    seen: Pick<Projected, "x" | "y">,
    wanted: (part: number) => boolean,
  ) => number[];
  readonly pick: (
    scene: Scene,
    seen: Pick<Projected, "x" | "y" | "depth">,
    x: number,
    y: number,
    shown: (part: number) => boolean,
  ) => Picked | undefined;
  readonly paintedAreas: (
    scene: Scene,
    seen: Projected,
    paint: Paint,
    covered: (x: number, y: number, depth: number) => boolean,
  ) => Area[];
  readonly svgPicture: (
    width: number,
    height: number,
    ground: string,
    areas: readonly Area[],
    overlay: Overlay,
    title: string,
    namespace: string,
  ) => string;
  readonly composePicture: (
    tools: ViewerTools,
    scene: Scene,
    camera: Camera,
    raster: Raster,
    ratio: number,
    look: Look,
  ) => Picture;
  readonly paintOverlay: (ink: Canvas2d, overlay: Overlay, ratio: number) => void;
  readonly rgbOf: (colour: string) => [number, number, number];
  readonly scaleColours: (scale: readonly (readonly [number, string])[], bands: number) => Rgb[];
  readonly kindColours: (theme: Theme) => Readonly<Record<string, Rgb>>;
}
