import { Container, Graphics } from 'pixi.js';
import { elbow, hull, joined, lobe, rib, type Spot } from './figure-shape.ts';
import { HEAD, SHOULDER, TRUNK, legRibs, poseKey, type Pose } from './figure-pose.ts';
import type { Style } from './layout.ts';
import { mixed } from './tokens.ts';

/** The covers of the body, pixels: foam or shell, and the gas under a drysuit; how far down that gas lets the body hang. */
export interface Covers {
  readonly suitPx: number;
  readonly gapPx: number;
}

/** Bones of the arm as seen from the side, where most of their length points at the eye, metres. */
const UPPER_ARM_M = 0.2;
const LOWER_ARM_M = 0.22;

/** Body, suit, fins and face: one silhouette in section. Drawn anew only when it looks different. */
export class DiverBody {
  readonly far = new Container();
  readonly near = new Container();
  readonly #style: Style;
  readonly #farLimbs = new Graphics();
  readonly #trunk = new Graphics();
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    this.far.addChild(this.#farLimbs);
    this.near.addChild(this.#trunk);
  }

  draw(pose: Pose, covers: Covers, pxPerM: number): void {
    const key = `${poseKey(pose)} ${Math.round(covers.suitPx * 8)} ${Math.round(covers.gapPx * 8)} ${pxPerM}`;
    if (key === this.#key) return;
    this.#key = key;
    const scaled = (points: number[]) => points.map((metres) => metres * pxPerM);
    const near = legRibs(pose.near);
    const far = legRibs(pose.far);
    const head = lobe(HEAD, 0.125, 0.125 * 0.118 * Math.PI, 0);
    const arm = this.#armOf(pose.hand);
    const farArm = this.#armOf({ x: pose.hand.x + 0.05, y: pose.hand.y - 0.04 });
    this.#farLimbs.clear();
    this.#fin(this.#farLimbs, scaled(hull(far.fin)));
    this.#section(this.#farLimbs, [scaled(hull(far.leg)), scaled(farArm)], covers, 0.22);
    this.#section(this.#farLimbs, [scaled(arm)], covers, 0);
    this.#trunk.clear();
    this.#fin(this.#trunk, scaled(hull(near.fin)));
    this.#section(this.#trunk, [scaled(hull(near.leg)), scaled(hull(TRUNK)), scaled(head)], covers, 0);
    this.#face(pose.gaze, pxPerM);
  }

  #armOf(hand: Spot): number[] {
    const joint = elbow(SHOULDER, hand, UPPER_ARM_M, LOWER_ARM_M);
    return hull([
      rib(SHOULDER.x, SHOULDER.y, 0.052),
      rib((SHOULDER.x + joint.x) / 2, (SHOULDER.y + joint.y) / 2, 0.046),
      rib(joint.x, joint.y, 0.038),
      rib((hand.x + joint.x) / 2, (hand.y + joint.y) / 2, 0.036),
      rib(hand.x, hand.y, 0.032),
    ]);
  }

  /** Cuts through some limbs that belong together: ink without, then suit, then gas where there is any, then body. */
  #section(g: Graphics, outlines: readonly number[][], { suitPx, gapPx }: Covers, shade: number): void {
    const { tokens, unit } = this.#style;
    const ink = 1.7 * unit;
    const layer = (width: number, color: number) => {
      for (const points of outlines) g.poly(joined(points), false).stroke({ width: width * 2, color, join: 'round' });
    };
    const dim = (colour: number) => mixed(colour, tokens.ink, shade);
    layer(suitPx + gapPx + ink, tokens.ink);
    if (suitPx > 0) layer(suitPx + gapPx, dim(tokens.suit));
    if (gapPx > 0) {
      layer(gapPx + ink * 0.5, tokens.ink);
      layer(gapPx, tokens.gas);
      layer(ink * 0.5, tokens.ink);
    }
    const fill = suitPx > 0 ? tokens.body : mixed(tokens.body, tokens.suit, 0.25);
    for (const points of outlines) g.poly(points).fill(dim(fill));
  }

  #fin(g: Graphics, points: number[]): void {
    const { tokens, unit } = this.#style;
    g.poly(points)
      .fill(mixed(tokens.suit, tokens.ink, 0.55))
      .poly(joined(points), false)
      .stroke({ width: 1.7 * unit, color: tokens.ink, join: 'round' });
  }

  /** Mask and second stage, on the side where the diver looks. */
  #face(gaze: number, pxPerM: number): void {
    const { tokens, unit } = this.#style;
    const g = this.#trunk;
    const ahead = { x: Math.cos(gaze), y: Math.sin(gaze) };
    const spot = (forward: number, up: number): [number, number] => [
      (HEAD.x + ahead.x * forward + ahead.y * up) * pxPerM,
      (HEAD.y + ahead.y * forward - ahead.x * up) * pxPerM,
    ];
    g.moveTo(...spot(-0.12, 0.035))
      .lineTo(...spot(0.09, 0.035))
      .stroke({ width: 0.022 * pxPerM, color: tokens.ink });
    const mask = [
      spot(0.075, 0.075),
      spot(0.135, 0.066),
      spot(0.15, 0.03),
      spot(0.14, -0.014),
      spot(0.08, -0.01),
    ].flat();
    g.poly(mask)
      .fill(tokens.paper)
      .poly(joined(mask), false)
      .stroke({ width: 1.8 * unit, color: tokens.ink, join: 'round' });
    const [x, y] = mouthOf(gaze);
    g.circle(x * pxPerM, y * pxPerM, 0.042 * pxPerM)
      .fill(mixed(tokens.suit, tokens.ink, 0.55))
      .stroke({ width: 1.4 * unit, color: tokens.ink });
  }
}

/** Where the second stage is, in the figure's frame, metres. */
export function mouthOf(gaze: number): [x: number, y: number] {
  return [
    HEAD.x + Math.cos(gaze) * 0.135 - Math.sin(gaze) * 0.06,
    HEAD.y + Math.sin(gaze) * 0.135 + Math.cos(gaze) * 0.06,
  ];
}
