import { readFileSync } from 'node:fs';
import { Dive, midBreathCl, restingControls, startState, type Controls } from '../../src/dive/index.ts';
import { loadSetupText } from '../../src/diver/file.ts';
import { rigOf, type Rig } from '../../src/diver/index.ts';

/** The rig of one of our own setups. */
export function readyRig(id: string): Rig {
  return rigOf(loadSetupText(readFileSync(new URL(`../../src/diver/setups/${id}.yaml`, import.meta.url), 'utf8')));
}

/** A dive in which hands are busy: 20 changes a second of breath, every other one between twentieths, and now and then of all else. */
export function busyDive(rig: Rig, seconds: number, chance: () => number, depthM = 3): Dive {
  const dive = new Dive(rig, startState(rig, { depthM }), restingControls(midBreathCl(rig)));
  const between = (least: number, most: number) => least + chance() * (most - least);
  for (let i = 0; i < seconds * 20; i++) {
    const wish: { -readonly [Name in keyof Controls]: Controls[Name] } = { ...dive.controls };
    wish.lungCl = 320 + 150 * Math.sin(i / 18) + between(-5, 5);
    if (chance() < 0.03) wish.breath = Math.floor(between(0, 3));
    if (chance() < 0.05) wish.jacketAdd = 1 - wish.jacketAdd;
    if (chance() < 0.05) wish.jacketVent = Math.floor(between(0, 3));
    if (chance() < 0.2) wish.finsN = between(-40, 40);
    if (chance() < 0.1) wish.pitchDeg = between(-60, 90);
    if (chance() < 0.02) wish.suitAdd = 1 - wish.suitAdd;
    if (chance() < 0.01) wish.releaseMask |= 1;
    dive.steer(wish);
    dive.advance(i % 2 === 0 ? 8 : 4);
  }
  return dive;
}
