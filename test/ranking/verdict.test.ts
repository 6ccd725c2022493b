/** The answer in words, on made-up figures: what must be said, not how. */

import { describe, expect, test } from "vitest";
import type { LoopCoupling } from "../../src/ranking/control-band.ts";
import type { Overhang } from "../../src/ranking/types.ts";
import type { Use } from "../../src/ranking/use.ts";
import { writeVerdict } from "../../src/ranking/verdict.ts";
import { CANTILEVERED, FAR, LOOP, type Made, OFF, OVERHANG, ranked } from "./made-places.ts";

const verdict = (made: readonly Made[], overhangs: readonly Overhang[] = [], use: Use = "both") => {
  const v = writeVerdict(ranked(made), overhangs, { use, residual: 1, controlBandwidth: 40 });
  const spoken = [v.headline, ...v.sentences];
  return { ...v, spoken: spoken.join(" "), all: [...spoken, ...v.remarks].join(" ") };
};

describe("one place", () => {
  const v = verdict([{ name: "A", gyro: 12.34, delay: 2.34, notched: 1.1 }]);

  test("is told with its level and its price, and compared with nothing", () => {
    expect(v.headline).toMatch(/only place looked at.*"A".*12 deg\/s/);
    expect(v.headline).toContain("2.3 ms");
    expect(v.headline).toContain("1.1 ms with notches");
    expect(v.sentences).toEqual([]);
    expect(v.all).not.toMatch(/ tie|worse|matters/);
  });

  test("that is bad is not recommended", () => {
    const w = verdict([{ name: "A", gyro: 12.34, flags: [OFF] }]);
    expect(w.headline).toMatch(/^The only place looked at is bad.*"A"/);
    expect(w.spoken).not.toContain("Put the stack");
    expect(w.spoken).toContain("pattern off the plate");
  });
});

describe("the price of filtering", () => {
  test.each([
    [0, 0, /needs no filter for 1 deg\/s/, /low-pass/],
    [3, 3, /a low-pass of 3\.0 ms delay brings to 1 deg\/s/, /notches/],
    [
      "out of reach",
      1.5,
      /no low-pass above the control band \(40 Hz\).*1\.5 ms with notches/,
      /needs no/,
    ],
    ["out of reach", "out of reach", /no low-pass above the control band \(40 Hz\)/, /notches/],
  ] as const)("%s ms, with notches %s ms", (delay, notched, says, not) => {
    const v = verdict([{ name: "A", gyro: 10, delay, notched }]);
    expect(v.headline).toMatch(says);
    expect(v.headline).not.toMatch(not);
  });
});

describe("one clear winner", () => {
  const made: Made[] = [
    { name: "A", gyro: 10, delay: 2 },
    { name: "B", gyro: 20, delay: 2.5, ahead: -30 },
    { name: "C", gyro: 60, delay: 3.1, designed: true, ahead: 63 },
  ];
  const v = verdict(made);

  test("is named with its plate and level", () => {
    expect(v.headline).toContain('Put the stack at "A" on the plate "deck"');
    expect(v.headline).toContain("10 deg/s rms");
  });

  test("it matters: what the place as drawn costs, in decibels, delay and false tilt", () => {
    expect(v.sentences.length).toBe(2);
    expect(v.sentences[0]).toMatch(/matters: "C", where the file puts it/);
    expect(v.sentences[0]).toContain("16 dB more gyro noise");
    expect(v.sentences[0]).toContain("1.1 ms more filter delay");
    // atan(0.063 x 3.4907^2/9.80665) = 4.48 degrees
    expect(v.sentences[0]).toContain("4.5 degrees of false tilt");
    expect(v.sentences[1]).toMatch(
      /"C" sits 63 mm ahead of the centre of gravity.*200 deg\/s.*4\.5 degrees nose down/,
    );
    expect(v.all).toMatch(/"C", place 3, 16 dB worse/);
  });

  test("in rate flight false tilt is not held against it", () => {
    const w = verdict(made, [], "rate");
    expect(w.sentences[0]).toContain("16 dB more gyro noise");
    expect(w.spoken).not.toMatch(/tilt|centre of gravity/);
  });

  test("where nothing is drawn, the worst shows what is at stake", () => {
    const w = verdict(made.map((m) => ({ ...m, designed: false })));
    expect(w.sentences[0]).toContain('"C" reads');
  });

  test("the chief cause is named with frequency, speed and what would move it", () => {
    const text = v.remarks.find((r) => r.includes("62 %"));
    expect(text).toContain("unbalance");
    expect(text).toContain("181 Hz");
    expect(text).toContain("10900 rpm");
    expect(text).toContain("arms 20 % thicker raise that frequency by up to 17 %");
  });

  test("other states of the propellers are told", () => {
    expect(v.all).toMatch(/one bad propeller, at worst on the rear left motor, it reads 20 deg\/s/);
    expect(v.all).toMatch(/lost its balance, at worst on the rear right motor, it reads 90 deg\/s/);
  });
});

test("quiet everywhere, but the place as drawn is far from the centre of gravity", () => {
  const made: Made[] = [
    { name: "A", gyro: 10 },
    { name: "B", gyro: 10.1, score: 3, designed: true, ahead: -63 },
  ];
  const v = verdict(made);
  expect(v.sentences[0]).toMatch(/hardly matters.*but "B".*4\.5 degrees of false tilt/);
  expect(v.sentences[1]).toMatch(/63 mm behind.*4\.5 degrees nose up/);
  expect(verdict(made, [], "rate").spoken).not.toMatch(/tilt/);
});

test("a whole craft that moves as one is no mode", () => {
  const v = verdict([{ name: "A", gyro: 10, rigid: true }]);
  expect(v.all).toMatch(/whole craft/);
  expect(v.all).not.toMatch(/a mode at 0/);
});

test("a place under a plate is told to be under it", () => {
  expect(verdict([{ name: "A", gyro: 10, below: true }]).headline).toContain(
    '"A" under the plate "deck"',
  );
});

describe("ties", () => {
  const v = verdict([
    { name: "A", gyro: 10.4, tied: true },
    { name: "B", gyro: 10, tied: true, flags: [FAR], ahead: 40 },
    { name: "C", gyro: 10.2, tied: true, flags: [FAR], ahead: 40, designed: true },
  ]);

  test("of all: it hardly matters, with the largest differences, and no place is called worse", () => {
    expect(v.headline).toContain('Put the stack at "A"');
    expect(v.sentences[0]).toMatch(/3 places left.*hardly matters.*tie, within 0\.3 dB/);
    expect(v.sentences[0]).toMatch(/"B" and "C" lie too far from the centre of gravity/);
    expect(v.all).not.toMatch(/worse|worst place|it matters/);
  });

  test("are explained: what tells them apart, and where the file has the stack", () => {
    expect(v.remarks[0]).toMatch(/"A" ties with "B" and "C".*it alone has no flag/);
    expect(v.all).toMatch(/"C", ties/);
  });

  test("with as few flags, the score decides, and it says so", () => {
    const w = verdict([
      { name: "A", gyro: 10, tied: true },
      { name: "B", gyro: 10, tied: true },
    ]);
    expect(w.remarks[0]).toMatch(/best score/);
  });

  test("with a place found by the search: named places first, and why", () => {
    const w = verdict([
      { name: "A", gyro: 10.9, tied: true },
      { name: "S", gyro: 10, tied: true, found: true },
    ]);
    expect(w.headline).toContain('"A"');
    expect(w.remarks[0]).toContain("because the file names it");
    expect(w.all).toMatch(/search of the plates finds "S", 0\.7 dB better/);
  });

  test("of some: the rest is compared", () => {
    const w = verdict([
      { name: "A", gyro: 10, tied: true },
      { name: "B", gyro: 10.5, tied: true },
      { name: "C", gyro: 40 },
    ]);
    expect(w.sentences[0]).toMatch(/matters: "C" reads 12 dB more/);
    expect(w.remarks[0]).toMatch(/^"A" ties with "B"/);
  });

  test("a long list of ties is counted, not read out", () => {
    const names = ["A", "B", "C", "D", "E", "F"];
    const w = verdict(names.map((name) => ({ name, gyro: 10, tied: true })));
    expect(w.remarks[0]).toContain('ties with "B", "C", "D" and 2 others');
  });
});

describe("places ruled out", () => {
  const coupling: LoopCoupling = { axis: "pitch", frequency: 65.1, mode: 1, ratio: 8, gain: 2.42 };

  test("are refused by name, with reasons, level and delay", () => {
    const v = verdict([
      { name: "A", gyro: 10 },
      { name: "B", gyro: 100, delay: 3.7, flags: [CANTILEVERED, LOOP], couplings: [coupling] },
      { name: "C", gyro: 11, flags: [OFF, FAR] },
    ]);
    const never = v.sentences[v.sentences.length - 1];
    expect(never).toMatch(/^Never at "B" \(cantilevered; .*\) and "C" \(pattern off the plate/);
    expect(never).toMatch(/pitch mode at 65\.1 Hz.*gain 2\.4/);
    expect(never).toContain("20 dB more gyro noise");
    expect(never).toContain("1.7 ms more filter delay");
    expect(never).not.toContain("far from");
    expect(v.headline).toContain('"A"');
    expect(v.sentences[0]).toContain("only place without a flag that rules it out");
  });

  test("are not what the others are compared with", () => {
    const v = verdict([
      { name: "A", gyro: 10 },
      { name: "B", gyro: 13 },
      { name: "C", gyro: 100, flags: [CANTILEVERED] },
    ]);
    expect(v.sentences[0]).toMatch(/places not ruled out.*"B" reads 2\.3 dB more/);
    expect(v.sentences[0]).not.toContain('"C"');
  });

  test("all of them: none is good, the least bad is named, and each with its reason", () => {
    const v = verdict([
      { name: "B", gyro: 30, flags: [CANTILEVERED] },
      { name: "C", gyro: 40, flags: [OFF] },
    ]);
    expect(v.headline).toMatch(/^No place is good.*"B".*30 deg\/s/);
    expect(v.headline).not.toContain("Put the stack");
    expect(v.spoken).toMatch(/Ruled out: "B" \(cantilevered.*"C" \(pattern off the plate/);
  });

  test("many are counted", () => {
    const bad = ["B", "C", "D", "E"].map((name) => ({ name, gyro: 20, flags: [OFF] }));
    const v = verdict([{ name: "A", gyro: 10 }, ...bad]);
    expect(v.spoken).toMatch(/"B".*"C".* and 2 more\./);
  });

  test("a quieter place that is ruled out does not read as louder", () => {
    const v = verdict([
      { name: "A", gyro: 20 },
      { name: "B", gyro: 10, flags: [OFF] },
    ]);
    expect(v.spoken).not.toMatch(/-\d/);
    expect(v.spoken).not.toMatch(/6\.0 dB more/);
  });
});

describe("overhangs", () => {
  test("that are lively are named even where no candidate sits on them", () => {
    const v = verdict([{ name: "A", gyro: 10 }], [OVERHANG]);
    expect(v.spoken).toContain("Keep the stack off the overhang");
    expect(v.spoken).toContain("90 mm");
  });

  test("also beside a place that is ruled out for another reason", () => {
    const v = verdict(
      [
        { name: "A", gyro: 10 },
        { name: "C", gyro: 11, flags: [OFF] },
      ],
      [OVERHANG],
    );
    expect(v.spoken).toMatch(/Never at "C".*nor on the overhang.*90 mm/);
  });

  test("that nothing shakes are not", () => {
    const v = verdict([{ name: "A", gyro: 10 }], [{ ...OVERHANG, flagged: false }]);
    expect(v.all).not.toContain("overhang");
  });
});

test("a place on isolators: what screws would do, and whether the rate loop reaches it then", () => {
  const [place] = ranked([{ name: "A", gyro: 0.4, flags: [LOOP] }]);
  const isolators = { name: "soft pads", axial: 450, lateral: 225, lossFactor: 0.3, z: 0 };
  const soft = { ...place, candidate: { ...place.candidate, isolators } };
  const settings = { use: "both", residual: 1, controlBandwidth: 40 } as const;
  const screwed = { name: "screwed down", gyro: 20, accel: 1, filter: place.filter, flags: [] };
  const remarks = (row: object) =>
    writeVerdict([soft], [], settings, [{ ...screwed, ...row }]).remarks.join(" ");
  expect(remarks({})).toMatch(/Screwed down instead of on soft pads, "A" would read 20 deg\/s rms/);
  expect(remarks({})).toMatch(/2\.0 ms of low-pass delay, with no mode there/);
  expect(remarks({ flags: [LOOP] })).not.toContain("no mode there");
  expect(writeVerdict([place], [], settings, [screwed]).remarks.join(" ")).not.toContain("Screwed");
});

test("four sentences at most, each ends, and none has a number that is none", () => {
  const v = verdict(
    [
      { name: "A", gyro: 0.0123 },
      { name: "D", gyro: 0.1, designed: true, ahead: 300 },
      { name: "B", gyro: 0.5, flags: [CANTILEVERED] },
    ],
    [OVERHANG],
  );
  expect(v.sentences.length).toBe(3);
  for (const s of [v.headline, ...v.sentences, ...v.remarks]) {
    expect(s).toMatch(/\.$/);
    expect(s).toMatch(/^["A-Z0-9]/);
    expect(s).not.toMatch(/NaN|Infinity|undefined|\de[+-]\d|\.\.| {2}/);
  }
});
