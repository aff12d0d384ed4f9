// `npm test` on a fresh clone: installs what is missing, then runs the whole gate. Node alone must be able to read this.
import { needBrowsers, needPackages, npm } from './install.mjs';

const need = needPackages() ?? needBrowsers();
if (need) {
  console.error(need);
  console.log('0 passed, 1 failed');
  process.exit(1);
}
process.exit(npm(['run', '--silent', 'ok']));
