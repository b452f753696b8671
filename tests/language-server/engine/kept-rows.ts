/**
 * Edits of small jobs, each with the number of actions that it has executed again: what comes near the things that are
 * otherwise than before, and everything behind a change of what the watchers know (notices, locks) until they agree.
 */

const MACHINE = `machine m "M" {
  variant size: small, large
  part bed "bed" fixed
  part cover "cover" on bed  held by bolts  mass 30 kg
  fastener bolts "bolts" x2  plan { 10 N·m; 22 N·m }
  part lid "lid" on bed
  part pad "pad" on bed  hazard sharp
  part shim "shim" on bed
  part guard "guard" on bed  carries pad
  connection hose "hose" joins lid to bed  opens air
  system air "air" pressure 8 bar  relieved at valve  hazard pressure
  control valve "valve" in air
  control knob "knob" on bed
  system mains "mains" live 400 V  isolated at breaker
  isolator breaker "breaker" in mains
  system oil "oil" holds 2 L fluid-oil
  fluid fluid-oil "oil"
  consumable paste "paste" curing time 2 h
  face rim "rim" under lid  coated with paste
  part wheel "wheel" on bed
  tool bar "bar"
  tool jack "jack"
}
`;

export interface Row {
  name: string;
  headers?: string;
  steps: string;
  /** What stands once in the text, what is put in its place, and how many actions that has executed at most; `anew`: all. */
  edits: readonly (readonly [old: string, text: string, executed: number | 'anew'])[];
  others?: string;
}

/** Work that nothing else here touches. */
const IDLE = 'clean wheel\nmark wheel\nalign wheel\nadjust wheel\nturn wheel\n';

export const textOf = ({ headers = '', steps, others = '' }: Row) =>
  `${MACHINE}${others}procedure p "Job" for m ${headers} {\n${steps}}\n`;

export const ROWS: readonly Row[] = [
  {
    name: 'a step put in, changed, taken out',
    steps: `remove bolts\nremove cover\n${IDLE}refit cover\nrefit bolts\n`,
    edits: [
      // Its own step, and two behind it that work on the cover.
      ['clean wheel\n', 'clean wheel\nmark cover\n', 3],
      ['mark cover', 'clean cover', 3],
      ['clean cover\n', '', 0],
      // Both behind it are blamed now, and leave the cover as it was.
      ['remove bolts\n', '', 2],
      ['remove cover\n', 'remove bolts\nremove cover\n', 3],
    ],
  },
  {
    name: 'a sentence',
    steps: `remove bolts "Slowly."\nremove cover\n${IDLE}refit cover\nrefit bolts\n`,
    edits: [
      ['Slowly', 'Quickly', 1],
      ['refit bolts\n', 'refit bolts "By hand."\n', 1],
    ],
  },
  {
    name: 'the last step',
    steps: `${IDLE}unbolt cover\nclean bed\nbolt up cover\n`,
    edits: [
      ['bolt up cover\n', '', 0],
      ['clean bed\n', 'clean bed\nbolt up cover\n', 1],
      ['bolt up cover', 'refit cover', 1],
    ],
  },
  {
    name: 'a header, the brace, the name',
    headers: 'people 1',
    steps: `${IDLE}unbolt cover\nclean bed\nbolt up cover\n`,
    edits: [
      ['people 1', 'people 2', 'anew'],
      ['people 2', 'ends with cover off', 'anew'],
      ['procedure p ', 'procedure q ', 'anew'],
    ],
  },
  {
    name: 'a task that is used before and behind it',
    steps: `do strip\n${IDLE}refit lid\ntask strip "Strip" {\n  relieve air\n  disconnect hose\n  remove lid\n}\nconnect hose\nreverse strip\n`,
    edits: [
      ['relieve air', 'relieve air "First."', 15],
      ['task strip', 'task stripe', 10],
      ['task stripe', 'task strip', 15],
    ],
  },
  {
    name: 'a notice, before and behind its step',
    steps: `warning sharp "The edge cuts. Wear gloves."\nremove pad\n${IDLE}clean pad\nrefit pad\n`,
    edits: [
      ['warning sharp "The edge cuts. Wear gloves."\n', '', 8],
      ['remove pad\n', 'remove pad\nwarning sharp "The edge cuts. Wear gloves."\n', 7],
      ['warning sharp', 'danger sharp', 7],
    ],
  },
  {
    name: 'what is measured and looked up',
    steps: `remove lid\nmeasure wear of shim as worn\n${IDLE}choose shim by worn\nremove shim\nfit new shim\nrecord rest = worn + 1 mm\nrefit lid\n`,
    edits: [
      ['wear of shim', 'wear of pad', 3],
      ['as worn', 'as other', 3],
      ['clean wheel\n', 'clean wheel\nremove pad\nrefit pad\n', 11],
      ['remove shim\n', '', 1],
    ],
  },
  {
    name: 'the position of a control that declares none',
    steps: `open knob\n${IDLE}close knob\nopen knob\nclose knob\n`,
    edits: [['open knob\nclean', 'close knob\nclean', 4]],
  },
  {
    name: 'a tool that holds a thing',
    steps: `support pad with jack\n${IDLE}unbolt guard\nbolt up guard\nremove jack\n`,
    edits: [
      ['with jack', 'with bar', 9],
      ['with bar', '"By hand."', 9],
    ],
  },
  {
    name: 'a tool that locks a thing',
    steps: `lock wheel with bar\nclean bed\nclean lid\nclean pad\nmark lid\nmark pad\nunlock wheel\nturn wheel\n`,
    edits: [
      ['lock wheel with bar\n', '', 3],
      ['unlock wheel\n', '', 1],
    ],
  },
  {
    name: 'a branch, an outcome, a repeat',
    steps: `when size is small {\n  remove lid\n}\n${IDLE}inspect pad for "cracks" {\n  sound { }\n  cracked { remove pad }\n}\nif "worn" { refit lid }\nrepeat until "clean" at most 3 times { clean bed }\nrefit pad\n`,
    edits: [
      ['size is small', 'size is large', 2],
      ['sound { }', 'sound { clean pad }', 7],
      ['cracked', 'broken', 'anew'],
      ['"worn"', '"torn"', 'anew'],
      ['clean bed', 'mark bed', 'anew'],
    ],
  },
  {
    name: 'a fault that makes a hint needless',
    headers: 'people 2',
    steps: `remove bolts\nremove cover with 2 people\nclean wheel\nmark wheel\nrefit cover with 2 people\nrefit bolts\n${IDLE}raise cover with 2 people\nlower cover\n`,
    edits: [
      ['raise cover with 2 people', 'raise cover with 1 person', 1],
      ['raise cover with 1 person', 'raise cover with 2 people', 1],
    ],
  },
  {
    name: 'stop and continues',
    steps: `remove lid\n${IDLE}if "worn" { stop "Order one." }\nrefit lid\n`,
    edits: [
      ['stop "Order one."', 'clean lid', 2],
      ['refit lid\n', 'continues\n', 0],
      ['continues\n', '', 0],
    ],
  },
  {
    name: 'a fault that is found again',
    steps: `remove lid\nremove lid\n${IDLE}step { remove lid }\nrefit lid\n`,
    edits: [
      ['remove lid\nclean', 'refit lid\nclean', 3],
      ['step { remove lid }', 'step { mark lid }', 2],
    ],
  },
  {
    name: 'energy that is let out before the lock',
    steps: `switch off breaker\nrelieve air\nlock out breaker\n${IDLE}disconnect hose\nunlock breaker\nconnect hose\nswitch on breaker\n`,
    edits: [
      ['relieve air\nlock out breaker\n', 'lock out breaker\nrelieve air\n', 11],
      ['connect hose\nswitch on', 'switch on', 0],
    ],
  },
  {
    name: 'a compound that cures',
    steps: `let cool oil\nremove lid\nclean rim\ncoat rim with paste\nrefit lid\nwait 1 h\n${IDLE}fill oil with fluid-oil\n`,
    edits: [
      ['wait 1 h', 'wait 2 h', 1],
      ['wait 2 h\n', '', 0],
      ['clean rim\n', '', 2],
    ],
  },
  {
    name: 'another procedure that is used',
    others:
      'procedure q "Q" for m ends with lid off {\n  remove lid\n  inspect bed for "cracks" { sound { } cracked { remove pad } }\n}\nprocedure r "R" for m elsewhere "Sheet 3" ends with oil drained\n',
    steps: `do q\n${IDLE}do r\nrefit lid\nfill oil with fluid-oil\nrefit pad\n`,
    edits: [
      ['do q\nclean', 'do r\nclean', 'anew'],
      ['do r\nrefit', 'do q\nrefit', 'anew'],
    ],
  },
];
