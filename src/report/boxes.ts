/** Bodies as boxes, for pictures only. */

import { widthAt } from "../model/arm.ts";
import type { BodyPart, Vec3 } from "../model/types.ts";
import type { Analysed } from "./types.ts";

/** A box along the axes with the number of its body. */
export interface BodyBox {
  readonly body: number;
  readonly centre: Vec3;
  readonly size: Vec3;
}

/** A motor without a size is drawn this much wider than its arm's tip, and this high for its width. */
const MOTOR_WIDTH = 1.7;
const MOTOR_HEIGHT = 0.65;

/** Bodies with a size, and the motors; propellers are left out. */
export function bodyBoxes({ model, file }: Pick<Analysed, "model" | "file">): BodyBox[] {
  const given = file.propulsion?.motor.size;
  return model.bodies.flatMap((b, body): BodyBox[] => {
    if (b.role === "motor") {
      const tip = b.host.kind === "arm" ? widthAt(model.arms[b.host.arm], 1) : 0.02;
      const [d, h] = given ?? [MOTOR_WIDTH * tip, MOTOR_WIDTH * MOTOR_HEIGHT * tip];
      return [{ body, centre: b.cg, size: [d, d, h] }];
    }
    if (b.role === "propeller" || !b.size) return [];
    return [{ body, centre: b.cg, size: b.size }];
  });
}

/** Whether a body is drawn as round from above. */
export function isMotor(b: BodyPart): boolean {
  return b.role === "motor";
}
