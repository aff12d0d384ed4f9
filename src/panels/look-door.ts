// What the looks over the water need of the panels: fetched when a look is first wanted, or before, while nothing else is to do.
import './hilltop-card.ts';
import './look-menu.ts';
import './parts-card.ts';

export {
  afloatWords,
  ledgerWords,
  mapWords,
  meansWords,
  neutralWords,
  reachWords,
  recoveryWords,
  steepnessWords,
  stoppingWords,
  unbroken,
  volumesWords,
} from './look-words.ts';
export { LOOKS, USUAL_LOOKS, toggled } from './looks.ts';
