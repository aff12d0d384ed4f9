import type { Plugin } from 'vite';

/** What stands in for a part: its names, and that it does nothing. */
const NOTHING = 'left out of the build: see tools/left-out.ts';
const refuses = (name: string) => `export function ${name}() { throw new Error(${JSON.stringify(NOTHING)}); }\n`;

/**
 * Parts of the drawing library that it brings along by itself and that the stage never calls, by the end of their path, with what stands
 * in for each: drawings from SVG text, sheets of sprites, particles, pictures from videos, masks made of pictures. Whoever
 * calls one after all meets an error that says where it went.
 */
export const LEFT_OUT: Readonly<Record<string, string>> = {
  'scene/graphics/shared/svg/SVGParser.mjs': refuses('SVGParser'),
  'scene/graphics/shared/svg/parseSVGPath.mjs': refuses('parseSVGPath'),
  'spritesheet/init.mjs': 'export {};\n',
  'scene/particle-container/shared/ParticleBuffer.mjs': 'export class ParticleBuffer {}\n',
  'unsafe-eval/particle/generateParticleUpdatePolyfill.mjs': refuses('generateParticleUpdatePolyfill'),
  // These two are registered, so they keep what registering and taking down read.
  'rendering/renderers/shared/texture/sources/VideoSource.mjs':
    "export class VideoSource { static extension = { type: 'texture-source', name: 'video' }; static test() { return false; } }\n",
  'rendering/mask/alpha/AlphaMaskPipe.mjs': `export class AlphaMaskPipe {
  static extension = { type: ['webgl-pipes', 'webgpu-pipes', 'canvas-pipes'], name: 'alphaMask' };
  push() { throw new Error(${JSON.stringify(NOTHING)}); }
  pop() {}
  destroy() {}
}\n`,
};

/** Leaves those parts out of the built page: a tenth of the script that a first flight loads. */
export function leftOut(): Plugin {
  return {
    name: 'left-out',
    apply: 'build',
    enforce: 'pre',
    load: {
      filter: { id: /\/node_modules\/pixi\.js\/lib\// },
      handler: (id) => {
        const code = LEFT_OUT[id.replace(/^.*\/node_modules\/pixi\.js\/lib\//, '')];
        return code === undefined ? null : { code, moduleType: 'js' };
      },
    },
  };
}
