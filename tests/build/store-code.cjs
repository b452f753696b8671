/**
 * Runs the built program on samples in this process and stores the code that V8 compiled for each part.
 * Run by build.mjs with the folder and the names of the parts; what the program prints here is of no interest.
 */
const { writeFileSync } = require('node:fs');
const { join } = require('node:path');

const [parts, ...names] = process.argv.slice(2);
const { load, scripts } = require(join(parts, 'dowel.cjs')).partsIn(parts);

/** Command lines that reach the code worth storing; their exit codes do not matter here. */
const SAMPLES = [
  ['check', 'procedures'],
  ['check', '--format', 'json', 'procedures'],
  ['explain'],
  ['format', '--check', 'procedures'],
  ['state', 'procedures/tarnbrook/valve-plate.dowel', '--at', '20'],
];

// Code fits only where V8's options are those of the run that loads it: those of a start, not of a long run.
require('node:v8').setFlagsFromString = () => {};

async function run() {
  for (const sample of SAMPLES) await load('main').main(sample);
  for (const name of names) {
    load(name);
    writeFileSync(join(parts, `${name}.code`), scripts.get(name).createCachedData());
  }
}

run();
