import { answerMap, type MapRequest } from './map-work.ts';

// Reckons recovery maps beside the page, so that no frame waits for one.
addEventListener('message', ({ data }: MessageEvent<MapRequest>) => postMessage(answerMap(data)));
