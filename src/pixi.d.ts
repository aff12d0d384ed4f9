/** Side effect only: lets the stage draw under a content policy that forbids eval. Its package ships no types for it. */
declare module 'pixi.js/unsafe-eval';
