/** What the stack reads at each place. */

import { type Seat, seatBeside, seatOf } from "../mesh/seat.ts";
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
    const seat = seatOf(mesh.grids[plate], holes, footprint, cg);
    const lever = [chip[0] - cg[0], chip[1] - cg[1], chip[2] - cg[2]] as const;
    return seat ? [{ candidate, seat, lever }] : [];
  });
  const mounted = found.map(
    ({ candidate, seat, lever }): Mounted => ({
      seat,
      stack: stackDynamics(candidate),
      chip: lever,
    }),
  );
  return placesOf(h, system, solved, mounted).map((place, i) => {
    const reading = readPlace(bare, place);
    const { candidate, seat, lever } = found[i];
    return {
      candidate,
      seat: seatBeside(seat, lever),
      place,
      reading,
      gyro: rms(reading.gyroAxes),
      accel: rms(reading.accelAxes),
    };
  });
}
