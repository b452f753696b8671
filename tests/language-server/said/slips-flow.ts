/** Slips with what is found, asked, repeated and used: outcomes, ranges, repeats, tasks, claims, references. */
import { type Bench, inHeaders, inMachine, inSteps, type Slip } from './slip.ts';

const BENCH: Bench = {
  subject: 'flow',
  machine: `machine m "M" {
  variant size: small, large
  part bed "bed" fixed
  part cover "cover" on bed  held by bolts  item 7
  fastener bolts "bolts" x4  item 3  also called "items 4 and 5"
  part covers "covers" x2 on bed
  part shaft "shaft" on bed under cover
  part rods "rods" x2 on bed
  seal ring "ring" on bed  single-use
  seal pair "packings" x2 on bed  single-use
  part crank "crank" on bed  sealed by ring, pair
  control valve "valve" normally closed
  connection hose "hose" joins cover to bed
  system air "air" pressure 8 bar  relieved at valve
  value limit = 0.3 mm
  table shims "Shims" {
    below 0.1 mm: 0.1 mm
    0.1..0.3 mm: 0.2 mm
    over 0.3 mm: 0.3 mm
  }
}
`,
};

const STEPS = inSteps(BENCH, [
  'inspect bed',
  'check bed',
  'measure gap of bed',
  'inspect bed for "cracks" { cracked { stop "Send it in." } }',
  'inspect bed for "cracks" {\nsound { }\ncracked { inspect cover }\n}\nclean bed',
  'measure gap of bed {\nbelow 1 mm { inspect cover }\nfrom 1 mm { }\n}\nclean bed',
  'measure gap of bed {\nbelow 1 mm { clean bed }\nover 1 mm { }\n}',
  'measure gap of bed {\nbelow 1 mm { clean bed }\nover 2 mm { }\n}',
  'measure gap of bed {\nup to 2 mm { clean bed }\n1..3 mm { }\n}',
  'measure gap of bed {\nup to 2 mm { clean bed }\nover 1 mm { }\n}',
  'measure gap of bed {\nfrom 1 mm { clean bed }\n}',
  'measure weight of bed {\nbelow -1 kg { clean bed }\nfrom 0 kg { }\n}',
  'measure gap of bed {\nbelow 3 mm and over 5 mm { clean bed }\notherwise { }\n}',
  'measure gap of bed {\nbelow 3 mm or over 5 mm { clean bed }\n3..5 mm { }\n}',
  'if "the gap is below 1 mm" and "the gap is over 2 mm" { clean bed }',
  'repeat until size is small at most 3 times { clean bed } otherwise { stop "No." }',
  'repeat until "clean" and size is small { clean bed }',
  'repeat until "it is clean" { clean bed }',
  'repeat until "it is clean" at most 3 times { clean bed }',
  'repeat until "it runs" at most 2 times { unbolt cover } otherwise { stop "No." }\nbolt up cover',
  'repeat until "it runs" at most 2 times { remove covers\nclean bed } otherwise { stop "No." }\nrefit covers',
  'repeat until "it runs" at most 2 times { disconnect hose } otherwise { stop "No." }\nconnect hose',
  'for each n in 1..600 { clean bed }',
  'if "it is worn" { unbolt cover }',
  'when size is small { unbolt cover }',
  'when size is small { remove covers }',
  'when size is small { when size is large { clean bed } }',
  'when size is small {\nremove covers\n} otherwise {\nremove covers #1\n}\nrefit covers #1',
  'if "it is worn" { remove bolts }\nremove cover\nif "it is worn" { refit cover }',
  'when size is small { if "it is worn" { remove covers } }',
  'choice place: bench, machine\nwhen place is machine { remove covers }',
  'choice place: bench, machine\nwhen place is machine { if "it is worn" { remove covers } }',
  'inspect bed for "cracks" {\nsound { }\ncracked { remove covers }\n}',
  'measure gap of bed {\nbelow 1 mm { remove covers }\nfrom 1 mm { }\n}',
  'inspect cover "Item 9."\nclean bed',
  'inspect cover "Items 9 and 8."',
  'inspect cover "Items 9, 8 and 6."',
  'inspect bolts "Item 9."',
  'inspect cover "Item 7, figure 1."\nclean cover "Item 7, figure 2."',
  'inspect bolts "Items 3 and 4, figure 1-2."\nclean bolts "Items 3 and 4, figure 1-3."',
  'task strip "Strip" {\nunbolt cover\ndisconnect hose\nremove crank and discard\n}\nreverse strip',
  'task strip "Strip" {\nunbolt cover\nremove rods and discard\n}\nreverse strip',
  'task strip "Strip" {\nremove crank\nremove ring\n}\nreverse strip',
  'task strip "Strip" {\nremove crank\nremove pair\n}\nreverse strip',
  'measure play of shaft as play\nunbolt cover\nremove shaft\nchoose rods from shims by play\nrefit shaft\nbolt up cover',
  'measure play of rods as play\nremove rods\nchoose rods from shims by play\nrefit rods',
  'measure play of shaft as play\nmeasure play of shaft as play',
  'measure play of shaft as gap',
  'choice place: bench, machine\nclean bed',
  'choice place: bench, machine\nwhen place is bnch { clean bed }',
  'choice place: bench, machine\nwhen place is floor { clean bed }',
  'value play "play" = 1 mm\nclean bed',
  'for each n in 1..2 { clean bed }',
  'task strip "Strip" {\nunbolt cover\n}\nreverse strp',
  'task strip "Strip" {\ndo strip\n}\ndo strip',
  'task strip "Strip" {\nunbolt cover\nbolt up cover\n}\ntask strip "Again" {\nclean bed\n}',
  'do strip',
]);

/** Uses inside uses, one layer too many. */
const DEEP = Array.from(
  { length: 52 },
  (_, index) => `task t${index + 2} "T${index + 2}" { do t${index + 1} }`,
);

const TOO_DEEP: Slip = {
  name: 'flow, tasks that use each other',
  text: `${BENCH.machine}procedure one "One" for m {\ntask t1 "T1" { clean bed }\n${DEEP.join('\n')}\n}\n`,
};

const TABLES = inMachine(
  BENCH,
  [
    'table gaps "Gaps" {\n below 0.1 mm: 1 mm\n over 0.2 mm: 2 mm\n}',
    'table gaps "Gaps" {\n up to 0.3 mm: 1 mm\n 0.2..0.5 mm: 2 mm\n}',
    'table gaps "Gaps" {\n below -1 kg: 1 mm\n from 0 kg: 2 mm\n}',
    'table gaps "Gaps" {\n below 1 mm: nothing-known\n from 1 mm: 2 mm\n}',
    'value one = two\n  value two = one',
    'value one = one + 1 mm',
  ],
  'clean bed',
);

const USED = inHeaders(BENCH, [
  `procedure one "One" for m starts with cover off, bolts off ends with cover, bolts off {\nremove shaft\nrefit shaft\n}
procedure two "Two" for m {\ndo one\nbolt up cover\n}`,
  `procedure one "One" for m ends with covers off {\nremove covers\n}
procedure two "Two" for m ends with covers off {\nremove covers\ndo one\n}`,
  `procedure one "One" for m ends with cover, bolts off, hose disconnected {\ndisconnect hose\nunbolt cover\n}
procedure two "Two" for m ends with cover, bolts off, hose disconnected {\ndo one\ndo one\n}`,
  'procedure one "One" for m ends with covers off, cover off {\nclean bed\n}',
  'procedure one "One" for m ends with valve open, hose disconnected {\nclean bed\n}',
  'procedure one "One" for m ends with bolts loose {\nclean bed\n}',
  'procedure one "One" for m starts with bolts fitted on trial {\nclean bed\n}',
  'procedure one "One" for m starts with air drained {\nclean bed\n}',
  'procedure one "One" for m starts with cover of {\nclean bed\n}',
  'procedure one "One" for m {\nif cover cold { clean bed }\n}',
  'procedure one "One" for m {\nif cover locked { clean bed }\nif air open { clean bed }\n}',
  'procedure one "One" for m {\ndo two\n}\nprocedure two "Two" for m {\ndo one\n}',
  'procedure one "One" {\nclean bed\n}',
  'procedure one "One" for n {\nclean bed\n}',
  'machine n "N" {\n}\nprocedure one "One" {\nclean bed\n}',
]);

export const FLOW_SLIPS: readonly Slip[] = [...STEPS, ...TABLES, ...USED, TOO_DEEP];
