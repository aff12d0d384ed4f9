import { answerLook, type LookRequest } from './look-work.ts';

// Reckons beside the page what takes longer than a frame has.
addEventListener('message', ({ data }: MessageEvent<LookRequest>) => postMessage(answerLook(data)));
