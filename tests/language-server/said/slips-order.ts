/** Slips in the order of work, on one machine: each kind of thing, one and several, where the words differ by it. */
const MACHINE = `machine m "M" {
  part bed "bed" fixed
  part drum "drum" on bed  fixed
  part wheels "wheels" x2 on bed
  part cover "cover" on bed  under lid, flaps  held by bolts  sealed by ring
  part lid "lid" on bed  held by clamp
  part flaps "flaps" x2 on bed
  part guard "guard" on bed  held by clips
  part pads "pads" positions left, right on bed  under lid, flaps  matched
  part shoes "shoes" x2 on bed  matched  numbered
  part wedges "wedges" x3 on bed  matched  numbered
  part arm "arm" on bed  carries wheels
  part brackets "brackets" x2 on bed  carries arm  held by studs
  part shims "shims" x2 on bed
  part motor "motor" on bed  opens mains
  part pulleys "pulleys" x2 on motor
  part gauge-block "gauge block" on bed  under cap
  part cap "cap" on bed  sealed by packings, felt
  seal ring "ring" on bed  single-use
  seal packings "packings" x2 on bed
  seal felt "felt" on bed
  fastener bolts "bolts" x4  order across  plan { 10 N·m; 22 N·m }
  fastener clamp "clamp" x1  frees when loose  torque 4 N·m
  fastener clips "clips" x2  frees when loose  torque 4 N·m
  fastener studs "studs" x2  plan { 8 N·m }
  fastener nut "shaft nut" x1  on bed  torque 30 N·m  left-hand
  part spacers "spacers" x2 on bed  under hatch
  part legs "legs" on bed
  part foot "foot" on legs
  part hatch "hatch" on bed
  part rail "rail" on bed  under plug
  part hood "hood" on bed  held by clasp, rivets  sealed by gland, cord
  fastener clasp "clasp" x1  frees when loose  torque 4 N·m
  fastener rivets "rivets" x2  torque 4 N·m
  seal gland "gland" on bed  single-use
  seal cord "cord" on bed
  part spout "spout" on bed  opens waters
  part coil-lid "coil lid" on bed  opens coil
  system coil "coil" temperature 90 °C
  fastener pins "pins" x2  on bed  thread M6x1  torque 5 N·m
  connection hoses "hoses" x2 joins lid to bed  sealed by o-rings
  connection plug "plug" joins motor to bed
  connection links "links" x2 joins flaps to pulleys
  seal o-rings "O-rings" x2 on bed
  control tap "tap" in oil  normally closed
  control levers "levers" x2 on bed
  control doors "doors" x2 on bed  normally closed
  isolator switch "switch" in mains  normally on
  system oil "oil" holds 2 L gear-oil  drained at tap
  system mains "mains" live 400 V  isolated at switch  proved with tester
  system waters "waters" pressure 2 bar
  system cell "cell" holds 1 L acid  live 24 V  isolated at knob
  isolator knob "knob" in cell
  fluid gear-oil "gear oil"
  fluid acid "acid"
  tool tester "tester"
  tool bar "holding bar" locks drum
  tool jigs "jigs" x2 locks wheels
  tool hook "hook"
  tool stands "stands" x2
  coupled drum, wheels
}
`;

/** Steps, one slip or a few of a kind each. */
const STEPS: readonly string[] = [
  // What is left at the end.
  'remove shims',
  'remove shims #1',
  'unbolt lid',
  'remove pins',
  'remove pins #2',
  'loosen pins',
  'loosen nut',
  'loosen bolts',
  'loosen studs',
  'move aside lid',
  'loosen clamp\nmove aside lid\ntighten clamp',
  'move aside flaps',
  'disconnect plug',
  'disconnect links',
  'drain oil',
  'isolate mains',
  'switch off switch',
  'lock drum',
  'lock wheels',
  'lock wheels #2',
  'support wheels with hook',
  'support arm with hook',
  'support wheels with stands',
  'fit bar',
  'fit jigs',
  'bypass doors with hook',
  'bypass tap with hook',
  'open tap',
  'open doors',
  'open doors #1',
  'open levers',
  'close levers #1',
  // What no step needs.
  'remove shims\nrefit shims',
  'remove guard\nrefit guard',
  'loosen clips\nremove guard\nrefit guard\ntighten clips',
  // What was never undone.
  'refit shims',
  'refit motor',
  'tighten pins',
  'tighten nut',
  'connect plug',
  'connect links',
  'close doors',
  'close tap',
  'switch on switch',
  'fill oil with 2 L gear-oil',
  'restore mains',
  'restore cell',
  'fill cell with 1 L acid',
  'restore oil',
  'fill mains with 1 L acid',
  'remove bar',
  'remove jigs',
  'unlock drum',
  'unlock wheels',
  'lower arm',
  'move back flaps',
  // What is done twice.
  'remove shims\nremove shims\nrefit shims',
  'remove pins\nremove pins\nfit pins',
  'remove pins #1\nremove pins\nfit pins',
  'fit bar\nremove bar\nremove bar',
  'fit bar\nfit bar\nremove bar',
  'fit jigs\nfit jigs\nremove jigs',
  'remove shims\nrefit shims\nrefit shims',
  'move aside flaps\nmove aside flaps\nmove back flaps',
  'move aside flaps\nmove back flaps\nmove back flaps',
  'remove shims and discard\nremove shims\nfit new shims',
  'remove shims and discard\ndiscard shims\nfit new shims',
  'remove shims\ntrial fit shims\ntrial fit shims\nremove shims\nrefit shims',
  'remove shims\ntrial fit shims\nrefit shims',
  'loosen pins\nloosen pins\ntighten pins',
  'loosen pins\ntighten pins\ntighten pins',
  'remove pins\nfit pins by hand\nfit pins by hand\ntighten pins',
  'remove pins\nfit pins\nfit pins',
  'disconnect links\ndisconnect links\nconnect links',
  'disconnect links\nconnect links\nconnect links',
  'disconnect links\ncap links\ncap links\nconnect links',
  'lock drum\nlock drum\nunlock drum',
  'lock wheels\nlock wheels\nunlock wheels',
  'lock drum\nunlock drum\nunlock drum',
  'fit bar\nunlock drum\nunlock drum',
  'isolate mains\nisolate mains\nrestore mains',
  'isolate mains\nrestore mains\nrestore mains',
  'isolate mains\nlock out switch\nlock out switch\nunlock switch\nrestore mains',
  'drain oil\ndrain oil\nfill oil with 2 L gear-oil',
  'drain oil\nfill oil with 2 L gear-oil\nfill oil with 2 L gear-oil',
  'support arm with hook\nsupport arm with hook\nlower arm',
  'support wheels with stands\nsupport wheels with stands\nlower wheels',
  'bypass doors with hook\nbypass doors with hook\nremove hook',
  'open doors\nopen doors\nclose doors',
  'open tap\nopen tap\nclose tap',
  'switch off switch\nswitch off switch\nswitch on switch',
  'isolate mains\nunlock switch\nrestore mains',
  // What holds, covers, carries or hangs on.
  'remove cover',
  'remove pads',
  'remove pads #left',
  'remove lid',
  'remove guard',
  'remove hood',
  'remove clasp\nremove hood',
  'remove rivets\nremove hood',
  'disconnect plug\nremove rail\nconnect plug\nrefit rail',
  'remove rivets, clasp\nremove hood\nremove gland, cord\nrefit hood\nfit rivets, clasp',
  'remove rivets, clasp\nremove hood\nremove cord\nfit new gland\nrefit hood\nfit rivets, clasp',
  'remove brackets',
  'remove brackets #2',
  'discard shims',
  'discard studs',
  'discard plug',
  'remove arm',
  'remove arm, brackets',
  'remove studs\nsupport arm with hook\nremove brackets\nlower arm\nrefit brackets\nfit studs',
  'remove motor',
  'remove flaps',
  'remove flaps #1',
  'loosen clamp\ndisconnect hoses\nremove lid\nremove flaps\nremove pads\nrefit flaps\nrefit lid\nrefit pads\ntighten clamp\nconnect hoses',
  'remove lid\nmark pads\nremove flaps, pads\ntrial fit flaps\nrefit pads',
  'unbolt lid\ndisconnect links\nremove flaps\nunbolt cover\nrefit flaps\nbolt up lid\nconnect links\nbolt up cover',
  // Seats and seals.
  'disconnect hoses\nremove o-rings\nconnect hoses',
  'disconnect hoses\nremove o-rings #1\nconnect hoses',
  'remove cap\nremove packings\nrefit cap',
  'remove cap\nremove packings, felt\nrefit cap',
  'remove cap\nremove packings and discard\nrefit cap',
  'remove cap\nremove felt and discard\nrefit cap',
  'unbolt lid\ndisconnect links\nremove flaps\nunbolt cover\nremove ring\nbolt up cover',
  'isolate mains\ndisconnect plug\nremove pulleys\nremove motor\nrefit pulleys\nrefit motor\nconnect plug\nrestore mains',
  'isolate mains\ndisconnect plug, links\nremove pulleys\nremove motor\nconnect plug\nrefit motor\nrefit pulleys\nconnect links',
  'disconnect links\nremove pulleys\nremove flaps\nconnect links\nrefit pulleys\nrefit flaps',
  'isolate mains\ndisconnect plug\nremove motor and discard\nfit new motor\nconnect plug\nrestore mains',
  'isolate mains\ndisconnect plug, links\nremove motor and discard\nrefit pulleys #1\nfit new motor\nconnect plug\nrestore mains',
  // Work on what is away.
  'remove shims\nclean shims\nalign shims\nrefit shims',
  'remove shims #1\nalign shims #1\nrefit shims #1',
  'remove pins\ntighten pins\nfit pins',
  'remove pins\nloosen pins\nfit pins',
  'remove pins #1\nloosen pins #1\nfit pins #1',
  'remove nut\nsecure nut\nfit nut',
  'remove nut\ntighten nut\nfit nut',
  'remove shims and discard\nclean shims\nfit new shims',
  'remove cap\nclean cap\nremove felt and discard\nclean felt\nfit new felt\nrefit cap',
  'remove cap\nmeasure gap between cap and bed\nrefit cap',
  'remove shims\nmeasure gap between shims and bed\nrefit shims',
  'isolate mains\ndisconnect plug, links\nremove motor\nmeasure gap between pulleys and bed\nrefit motor\nconnect plug, links\nrestore mains',
  'remove flaps\nmeasure gap between cap and flaps\nrefit flaps',
  'remove legs\nmeasure gap between foot and bed\nrefit legs',
  'remove wheels and discard\nturn wheels\nfit new wheels',
  'remove shims and discard\nrefit shims',
  'remove shims #1 and discard\nrefit shims #1',
  // Matched and marked.
  'remove shoes\nrefit shoes #1 at #2\nrefit shoes #2',
  'remove shoes\nrefit shoes at #2',
  'remove wedges #1, #2\nrefit wedges #1, #2 at #3',
  'unbolt lid\ndisconnect links\nremove flaps\nremove pads\nrefit pads\nrefit flaps\nbolt up lid\nconnect links',
  // Locked things that turn.
  'lock drum\nturn drum\nunlock drum',
  'lock drum\nturn wheels\nunlock drum',
  'lock wheels\nturn drum\nunlock wheels',
  'lock wheels\nturn wheels\nunlock wheels',
  'lock wheels #1\nturn wheels\nunlock wheels #1',
  'fit bar\nturn drum\nremove bar',
  'fit bar\nturn wheels\nremove bar',
  'fit jigs\nturn drum\nremove jigs',
  'fit bar, jigs\nturn drum\nremove bar, jigs',
  'fit bar\nlock wheels\nturn drum\nunlock wheels\nremove bar',
  // Trials.
  'remove shims\ntrial fit shims',
  'remove shims #1\ntrial fit shims #1',
  'remove cap\ntrial fit cap\nclean gauge-block\nremove cap\nrefit cap',
  'remove cap\ntrial fit cap\nremove gauge-block\nrefit gauge-block\nremove cap\nrefit cap',
  'remove cap, gauge-block\ntrial fit cap\nrefit gauge-block\nremove cap\nrefit cap',
  // Chosen.
  'remove hatch\nmeasure gap of bed as gap\nchoose spacers by gap\nrefit hatch',
  'remove hatch\nmeasure gap of bed as gap\nchoose spacers #2 by gap\nrefit hatch',
  // Verbs that do not fit.
  'cap plug',
  'cap links',
  'cap links #1',
  'switch off switch\nlock out switch\nswitch on switch',
  'close doors\nlock out doors\nopen doors',
  'lock out doors\nopen doors',
  'lock out doors #1\nopen doors #1\nclose doors #1',
  // Systems that come back too early.
  'drain oil\nopen tap\nfill oil with 2 L gear-oil\nclose tap',
  'isolate mains\nlock out switch\nrestore mains',
  'isolate mains\ndisconnect plug\nremove motor\nrestore mains\nrefit motor\nconnect plug',
  'isolate mains\nrun',
  'relieve waters\nremove spout\npressurise waters\nrefit spout',
  'let cool coil\nremove coil-lid\nrun\nrefit coil-lid',
  'drain oil\nrun\nfill oil with 2 L gear-oil',
  'isolate cell\nrun\nrestore cell',
  'drain cell\nrun\nfill cell with 1 L acid',
  // The way it turns.
  'loosen nut "Turn it counter-clockwise."\ntighten nut',
  'loosen nut "Left-hand thread: turn it clockwise."\ntighten nut "Turn it clockwise."',
  'loosen pins "Turn them clockwise."\ntighten pins',
  'loosen pins #1 "Turn it clockwise."\ntighten pins #1',
];

/** Headers and steps. */
const STARTS: readonly (readonly [string, string])[] = [
  ['starts with packings off', 'remove cap\nfit packings\nrefit cap'],
  ['starts with felt off', 'remove cap\nfit felt\nrefit cap'],
  ['starts with felt, packings off', 'remove cap\nfit felt, packings\nrefit cap'],
  ['starts with o-rings off', 'disconnect hoses\nfit o-rings\nconnect hoses'],
  ['ends with shims off', 'remove shims'],
  ['ends with shims off', 'clean bed'],
];

export const ORDER_SLIPS: readonly { name: string; text: string }[] = [
  ...STEPS.map((steps) => ({
    name: `order ${JSON.stringify(steps)}`,
    text: `${MACHINE}procedure p "Work" for m {\n${steps}\n}\n`,
  })),
  ...STARTS.map(([header, steps]) => ({
    name: `order ${JSON.stringify(header)} ${JSON.stringify(steps)}`,
    text: `${MACHINE}procedure p "Work" for m ${header} {\n${steps}\n}\n`,
  })),
];
