// What lies on the page for a while, and the ledger under it: fetched when it is first wanted, or before, while nothing else is to do.
import './debrief-sheet.ts';
import './gauges-note.ts';
import './ledger-bars.ts';
import './lesson-list.ts';
import './more-sheet.ts';
import './hint-note.ts';
import './question-sheet.ts';
