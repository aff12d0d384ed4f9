import './tokens.css';
import './frame.css';
import './deck.css';
import './sheets.css';
import './small.css';
import './projector.css';
import { Shell } from './shell.ts';

const root = document.createElement('div');
root.className = 'page';
document.body.append(root);
const shell = new Shell(root, window);

import('./fly.ts')
  .then(({ fly }) => fly(shell))
  .catch((problem: unknown) => {
    const words = problem instanceof Error ? problem.message : String(problem);
    shell.show({
      trouble: `The dive could not be started: a part of the program was not loaded or failed (${words}). Check the connection and load the page again.`,
    });
  });
