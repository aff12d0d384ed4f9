import { insightOf, recovers } from '../insight/index.ts';
import type { Command } from './command.ts';
import { momentOf } from './insight-moment.ts';
import { MOMENT_OPTIONS } from './insight-options.ts';
import { CAUTION, DONE, printJson } from './io.ts';

/** What a moment means: where it is neutral, how it falls away from there, and what still stops it. */
export const insight: Command = {
  name: 'insight',
  does: 'what a moment means: neutral depths, how steep, what lungs reach, what still stops the diver',
  options: MOMENT_OPTIONS,
  things: 'SETUP',
  least: 1,
  most: 1,
  more: `Result: { netN, neutral: [{ depthM, stable, eFoldingS, periodS }], neutralMid, neutralFull, neutralEmpty, kNPerM, shares,
inertiaKg, growthPerS, eFoldingS, doublingS, periodS, breathReachM: [from, to] or null, breathReachesM, way, stopping: [{ means,
stops, depthM, timeS, peakMps }], pricePerSecondM, recoversM, forecastM, caution }. Forces are up positive, depths and speeds down.
neutral: every depth without net force, gases kept, at the lungs of the moment; Mid: in the middle of the breath, Full and Empty: with
most and least lungs.
kNPerM: newtons that a metre deeper takes away, split in shares by what shrinks; above 0 the diver falls away from neutral.
breathReachM: where lungs alone, from least to most, balance the diver, at or nearest to the depth; breathReachesM: all such.
way: 1 sinking, -1 rising. stopping: what comes of each means, gentlest first: none, breath, fins, gas (every valve of jacket, suit and
loop), all (these three), lead (all, and the releasable lead gone). timeS counts from now, the reaction included; peakMps is the
greatest speed that way. pricePerSecondM: how much further the gentlest means that stops him carries for one second of delay.
recoversM: [{ means, deepestM, shallowestM }], from where each means still recovers at this speed and gas, sinking and
rising; null: from nowhere. forecastM: after 1, 2 … 10 s if nothing is done.`,
  run(asked, io) {
    const { rig, state, controls, ask } = momentOf(asked);
    const seen = insightOf(rig, state, controls, ask);
    printJson(io, {
      netN: seen.netN,
      neutral: seen.neutral,
      neutralMid: seen.neutralMid,
      neutralFull: seen.neutralFull,
      neutralEmpty: seen.neutralEmpty,
      ...seen.steepness,
      breathReachM: seen.reachM,
      breathReachesM: seen.reaches,
      way: seen.stopping.way,
      stopping: seen.stopping.rows,
      pricePerSecondM: seen.stopping.pricePerSecondM,
      recoversM: recovers(rig, state, controls, ask),
      forecastM: seen.forecastM.slice(1),
      caution: CAUTION,
    });
    return DONE;
  },
};
