/** What the stack reads at each place. */

import type { Seat } from "../mesh/seat.ts";
import { seatOf } from "../mesh/seat.ts";
import type { Candidate } from "../model/types.ts";
import type { BareFrame } from "../response/bare-frame.ts";
import { stackDynamics } from "../response/mount-stiffness.ts";
import { type Mounted, type Place, placesOf } from "../response/place.ts";
import { type Reading, readPlace, rms } from "../response/reading.ts";

export interface Assessed {
  readonly candidate: Candidate;
  /** of the chip */
  readonly seat: Seat;
  readonly place: Place;
  readonly reading: Reading;
  /** over the flight mix: deg/s rms and g rms */
  readonly gyro: number;
  readonly accel: number;
}

/** Places with no plate under them drop out. */
export function assess(bare: BareFrame, candidates: readonly Candidate[]): Assessed[] {
  const { mesh, h, system, solved } = bare;
  const found = candidates.flatMap((candidate) => {
    const { plate, holes, footprint, cg, chip } = candidate;
    const at = (point: typeof cg) => seatOf(mesh.grids[plate], holes, footprint, point);
    const [seat, chipSeat] = [at(cg), at(chip)];
    return seat && chipSeat ? [{ candidate, seat, chipSeat }] : [];
  });
  const mounted = found.map(({ candidate, seat }): Mounted => {
    const { cg, chip } = candidate;
    const lever = [chip[0] - cg[0], chip[1] - cg[1], chip[2] - cg[2]] as const;
    return { seat, stack: stackDynamics(candidate), chip: lever };
  });
  return placesOf(h, system, solved, mounted).map((place, i) => {
    const reading = readPlace(bare, place);
    return {
      candidate: found[i].candidate,
      seat: found[i].chipSeat,
      place,
      reading,
      gyro: rms(reading.gyroAxes),
      accel: rms(reading.accelAxes),
    };
  });
}
