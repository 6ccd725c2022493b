/** What would move a mode, from where its energy sits. */

import type { ModeDescription } from "../modes/types.ts";

/** A change of thickness that is told as an example: one step of 20 %. */
const STEP = 0.2;
/** Kinds of parts that hold less than this of the strain are not worth changing for this mode. */
const WORTH = 0.2;

/**
 * Rayleigh's quotient with the shape kept: a part that holds the share U of the strain and T of the
 * kinetic energy, made thicker by d, changes lambda by (1 + d)^p U - U over 1 + d T; p = 3 where it
 * bends out of its plane or twists, 1 in its plane. The shape does change, so this is the most to be had: for
 * arms that flap it is right within a point or two, for twisting ones up to 10 points too much (measured).
 */
export function thicknessEffect(strain: number, kinetic: number, power: number, d: number): number {
  const stiffness = 1 + strain * ((1 + d) ** power - 1);
  return Math.sqrt(stiffness / (1 + d * kinetic)) - 1;
}

/** One sentence part; empty where nothing stands out. */
export function remedy(mode: ModeDescription, isolators: number): string {
  if (isolators > 0.5) return "stiffer or softer isolators move it";
  const { motion, shares } = mode;
  const kinetic = (kind: string) =>
    shares.filter((s) => s.kind === kind).reduce((sum, s) => sum + s.kinetic, 0);
  const rise = (strain: number, kind: string, power: number) =>
    percent(thicknessEffect(strain, kinetic(kind), power, STEP));
  const arms = motion.armFlat + motion.armTorsion;
  const options: { readonly weight: number; readonly text: string }[] = [
    {
      weight: arms,
      text: `arms ${percent(STEP)} thicker raise that frequency by up to ${rise(arms, "arm", 3)}`,
    },
    {
      weight: motion.armEdge,
      text: `arms ${percent(STEP)} wider raise that frequency by up to ${rise(motion.armEdge, "arm", 3)}`,
    },
    {
      weight: motion.plateBending,
      text: `plates ${percent(STEP)} thicker raise that frequency by up to ${rise(motion.plateBending, "plate", 3)}, a standoff near the middle of the bend by more`,
    },
    {
      weight: motion.plateInPlane,
      text: `plates ${percent(STEP)} thicker raise that frequency by up to ${rise(motion.plateInPlane, "plate", 1)}`,
    },
    { weight: motion.standoff, text: "more or thicker standoffs raise that frequency" },
    { weight: motion.joint, text: "arms held over a greater length raise that frequency" },
    {
      weight: motion.softMount,
      text: `the soft mount of "${mountName(mode)}" sets it: a stiffer or softer pad moves it`,
    },
    { weight: motion.member, text: "stiffer members raise that frequency" },
  ];
  const best = options.reduce((a, b) => (b.weight > a.weight ? b : a));
  return best.weight >= WORTH ? best.text : "";
}

const percent = (v: number) => `${Math.round(100 * v)} %`;

function mountName({ shares }: ModeDescription): string {
  const mount = shares.find((s) => s.kind === "mount");
  return mount?.part.replace(/ mount$/, "") ?? "a body";
}
