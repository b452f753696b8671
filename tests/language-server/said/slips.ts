/** Small slips on one machine, one at a time: other words than the examples of the checks have (several things, other kinds). */

const MACHINE = `machine m "M" {
  variant size: small, large
  part bed "bed" fixed
  part cover "cover" on bed  held by bolts, studs  sealed by rings
  seal rings "rings" x2 on bed  single-use
  fastener bolts "bolts" x4  thread M8x1.25  order across  plan { 10 N·m; 22 N·m }
  fastener studs "studs" x2  thread M6x1  torque 8 N·m
  part lever "lever" on bed  held by nuts
  fastener nuts "nuts" x2  thread M6x1  torque 8 N·m
  part riders "riders" x2 on cover
  connection hoses "hoses" x2 joins cover to bed
  connection plug "plug" joins lever to bed
  system mains "mains" live 400 V  isolated at switch
  isolator switch "main switch" in mains
  system air "air" pressure 8 bar  relieved at valve
  control valve "valve" normally open in air
  system bath "bath" holds 2 L oil  temperature 80 °C
  fluid oil "oil"
  value gap = 0.3 mm
}
`;

const STEPS: readonly string[] = [
  'remove frobnitz',
  'remove bolt',
  'remove cover',
  'remove cover\nrefit cover',
  'remove studs\nremove cover',
  'remove lever\nrefit lever',
  'remove nuts\nremove lever\nrefit lever\nrefit nuts',
  'disconnect hoses\ndisconnect hoses',
  'disconnect plug',
  'disconnect hoses\nremove bolts, studs\nremove cover and discard\nfit new cover\nrefit studs, bolts',
  'loosen nuts\nloosen nuts',
  'loosen nuts #1\nloosen nuts',
  'tighten nuts',
  'refit nuts',
  'refit cover',
  'remove bolts #9',
  'remove bolts #1..#9',
  'open bed',
  'drain lever',
  'fill cover with oil',
  'switch on valve',
  'switch off valve\nclose valve',
  'switch off switch\nlock out switch\nswitch on switch',
  'close valve',
  'relieve air\nopen valve',
  'if size is medium { remove nuts }',
  'if colour is red { remove nuts }',
  'if bed is fast { remove nuts }',
  'do nothing-known',
  'reverse nothing-known',
  'measure gap of cover expect 0.2..0.4 mm',
  'measure "gap" expect 0.4..0.2 mm',
  'measure "gap" expect 1 ± 2 °C mm',
  'measure "gap" expect 0.2 mm..3 kg',
  'if "the gap is less than 0.2 mm and more than 0.3 mm" { clean bed }',
  'if "the gap is less than -1 mm" { clean bed }',
  'tighten nuts to 8 N·m ± 1 mm',
  'tighten bolts stage 2',
  'tighten bolts stage 9',
  'loosen bolts\ntighten bolts stage 2\ntighten bolts stage 1',
  'allow no-such-check "no reason"\nremove nuts',
  'allow still-held "a training rig"\nremove lever',
  'repeat 1000 times { loosen nuts\ntighten nuts }',
  'repeat until "clean" { clean bed }',
  'clean bed for 10 min "Wash it, wipe it and dry it."',
  'caution "Hot."\nopen valve',
  'run',
  'remove bolts, studs, rings',
  'fit new rings',
  'remove nuts\nremove lever and discard\nrefit lever\nrefit nuts',
  'remove bolts, studs\ndisconnect hoses\nremove cover\nrefit cover\nconnect hoses\nrefit bolts, studs',
];

const DECLARED: readonly string[] = [
  'part ghost "ghost" on nothing-known',
  'part ghost "ghost" on bed  held by nothing-known',
  'fastener lost "lost screws" x3',
  'fastener lost "lost screws" x3  thread M99x1',
  'fastener lost "lost screws" x3  secured by glue-gun',
  'control tap "tap" normally ajar in bath',
  'part bed "second bed"',
  'system fuel "fuel" drained at nothing-known',
  'value width = 3 mm + 2 kg',
  'value width = nothing-known',
  'seal gasket "gasket" on bed',
  'part pair "pair" x2 on riders x3',
];

export const SLIPS: readonly { name: string; text: string }[] = [
  ...STEPS.map((steps) => ({
    name: `steps ${JSON.stringify(steps)}`,
    text: `${MACHINE}procedure p "Work" for m {\n${steps}\n}\n`,
  })),
  ...DECLARED.map((line) => ({
    name: `declared ${JSON.stringify(line)}`,
    text: `${MACHINE.replace(/}\n$/, '')}  ${line}\n}\nprocedure p "Work" for m {\n  clean bed\n}\n`,
  })),
  { name: 'a machine that is nowhere', text: 'procedure p "Work" for nothing-known {\n  clean bed\n}\n' },
  { name: 'no machine at all', text: 'procedure p "Work" {\n  clean bed\n}\n' },
];
