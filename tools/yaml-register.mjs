// Given to Node by `--import`, so that the command may import the same setups and lessons as the page does.
import { register } from 'node:module';

register('./yaml-hook.mjs', import.meta.url);
