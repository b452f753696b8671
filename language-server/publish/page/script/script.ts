/**
 * The script of a procedure's page, as text: it only adds to a page that works without it. It keeps ticks, entries and
 * choices in this browser, tells what is on the bench, and counts at the end. It makes text only, never markup, and
 * asks nothing of any network. A test checks it with the TypeScript compiler.
 *
 * Written as text and not as a function, because bundlers rewrite functions and the policy names its exact bytes.
 */
import { BENCH } from './bench.ts';
import { KEEPING } from './keeping.ts';

export const WORK_SCRIPT = `(() => {
'use strict';
${KEEPING}
${BENCH}
start();
})();`;
