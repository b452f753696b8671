/**
 * Right jobs on a machine with the less common relations: shared bolts, parts that come with others, two switches on
 * one system, things that only some variants have, loops, branches, claims. Source of their being right: the chapter
 * on states (grammar/STATE.md); the trade practice behind them is common practice, no source.
 */

const MILL = `machine mill "Mill" {
  variant drive: belt, chain
  variant size: small, large
  never drive is chain and size is small
  system mains live 400 V isolated at main-switch and backup-switch
  system control-power live 24 V isolated at main-switch
  system coolant holds 10 L drained at tap-a and tap-b filled at filler vented at vent temperature 80 °C
  system air pressure 6 bar relieved at dump
  system spring stored "spring"
  isolator main-switch in mains
  isolator backup-switch in mains
  control tap-a in coolant
  control tap-b in coolant
  control vent in coolant
  control filler in coolant
  control dump in air
  control knob in air
  part frame fixed
  part door on frame held by door-screws #1..#3
  part plate on frame held by door-screws #3..#6 under door
  fastener door-screws x6
  part head on frame held by head-bolts sealed by head-seal opens coolant, air under hood
  seal head-seal on frame single-use
  part hood on frame only drive is chain
  part spindle on head
  part collet on spindle part of spindle
  part nose on spindle
  part sleeve on spindle supplied with sleeve-pins
  fastener sleeve-pins x2 single-use clamps sleeve to spindle
  fastener head-bolts x4 plan { 20 N·m; 40 N·m }
  part jaws positions left, right on frame held by jaw-bolts 2 each sealed by jaw-rings matched
  fastener jaw-bolts x4 single-use
  seal jaw-rings positions left, right on frame single-use
  part belt on pulley only drive is belt
  part pulley on frame
  part sprocket on frame only drive is chain
  coupled pulley, frame-wheel while belt fitted
  part frame-wheel on frame
  part arm on frame held by pivot joined by pipe opens air
  fastener pivot clamps arm to frame
  connection pipe joins arm to frame sealed by pipe-ring opens air
  seal pipe-ring on frame single-use
  part beam on frame held by beam-bolts carries table
  part beam-two on frame held by beam-bolts carries table
  fastener beam-bolts x2 clamps beam, beam-two to frame
  part table on frame held by table-screws
  fastener table-screws x2
  part a-plate on frame under b-plate
  part b-plate on frame
  part inner on frame under mid
  part mid on frame under outer
  part outer on frame
  tool peg locks frame-wheel
  tool peg-two locks pulley
  tool jack
  tool hoist
  kit service contains head-seal, jaw-rings, jaw-bolts
  part spare like inner
  face seat-face under head-seal, head
}
procedure shutdown elsewhere "chapter 2" for mill ends with mains isolated, air relieved
`;

/** Headers and steps of right jobs. */
const JOBS: readonly (readonly [headers: string, steps: string])[] = [
  [
    '',
    'task t { mark jaws\nunbolt jaws\nremove jaw-rings and discard }\nfit new jaw-rings\nrefit jaws\nfit new jaw-bolts by hand\ntighten jaw-bolts',
  ],
  [
    '',
    'mark jaws #left\nremove jaw-bolts #1, #2 and discard\nremove jaws #left\nremove jaw-rings #left and discard\nfit new jaw-rings #left\nrefit jaws #left\nfit new jaw-bolts #1..#2',
  ],
  [
    '',
    'remove door-screws #1..#3\nremove door\nremove door-screws #4..#6\nremove plate\nrefit plate\nfit door-screws #4..#6\nrefit door\nfit door-screws #1, #2, #3',
  ],
  ['', 'remove b-plate and a-plate\nclean frame\nrefit a-plate and b-plate'],
  ['', 'remove outer, mid, inner\nrefit inner\nrefit mid, outer'],
  [
    '',
    'remove outer\nremove mid\nif "worn" { remove inner and discard\nfit new inner } otherwise { clean inner }\nrefit mid\nrefit outer',
  ],
  ['', 'remove outer\nif "worn" { remove mid }\nclean frame\nif "worn" { refit mid }\nrefit outer'],
  [
    '',
    'choice place: bench, in-place\nremove outer\nwhen place is bench { remove mid\nremove inner }\nclean frame\nwhen place is bench { refit inner\nrefit mid }\nrefit outer',
  ],
  ['', 'task s { remove outer\nremove mid\nremove inner }\ntask r { reverse s }'],
  ['', 'task s { unbolt table\nremove outer\nwhen drive is belt { remove belt } }\ntask r { reverse s }'],
  ['', 'task s { loosen table-screws\nremove table-screws\nremove table }\ntask r { reverse s }'],
  ['', 'task s { remove outer\nremove mid\nremove inner }\ntask r { refit inner\nreverse s except inner }'],
  [
    '',
    'repeat until "flat" at most 3 times { remove outer\nclean mid\nrefit outer } otherwise { stop "Scrap." }',
  ],
  [
    '',
    'repeat until "flat" at most 3 times { remove outer\nclean mid\nrefit outer } otherwise { remove outer and discard\nfit new outer }',
  ],
  [
    '',
    'switch off main-switch\nswitch off backup-switch\nlock out main-switch\nprove mains safe\nunlock main-switch\nswitch on main-switch\nswitch on backup-switch',
  ],
  ['', 'isolate mains, control-power\nrestore mains, control-power'],
  ['', 'isolate control-power\nrestore control-power'],
  [
    '',
    'isolate mains\nlock out main-switch\nlock out backup-switch\nunlock main-switch, backup-switch\nrestore mains',
  ],
  ['', 'open tap-a\nopen tap-b\nclose tap-a\nclose tap-b\nopen filler\nfill coolant\nclose filler'],
  [
    '',
    'open vent\ndrain coolant\nclose vent\nopen filler\nopen vent\nfill coolant\nclose vent\nclose filler',
  ],
  [
    '',
    'let cool coolant\nopen dump\nprove air safe\ndrain coolant\nwhen drive is chain { remove hood }\nunbolt head\nremove head-seal and discard\nclean seat-face\nfit new head-seal\nbolt up head\nwhen drive is chain { refit hood }\nclose dump\nfill coolant',
  ],
  [
    '',
    'let cool coolant\nopen dump\nprove air safe\nwhen drive is chain { remove hood }\nunbolt head\nremove head-seal and discard\nclean seat-face\nfit new head-seal\nbolt up head\nwhen drive is chain { refit hood }\nclose dump\ntop up coolant',
  ],
  [
    '',
    'let cool head\nopen dump\nprove air safe\nwhen drive is chain { remove hood }\nremove head-bolts\nremove head\nremove sleeve-pins and discard\nremove sleeve\nremove nose\nremove spindle and discard\nfit new spindle\nrefit nose\nrefit sleeve\nfit new sleeve-pins\nremove head-seal and discard\nclean seat-face\nfit new head-seal\nrefit head\nfit head-bolts by hand\ntighten head-bolts to stage 1\ntighten head-bolts to stage 2\nwhen drive is chain { refit hood }\nclose dump\ntop up coolant',
  ],
  [
    '',
    'open dump\nprove air safe\ndisconnect pipe\nremove pipe-ring and discard\nremove pivot\nremove arm\nrefit arm\nfit pivot\nfit new pipe-ring\nconnect pipe\nclose dump',
  ],
  [
    '',
    'open dump\nprove air safe\ndisconnect pipe\ncap pipe\nremove pipe-ring and discard\nloosen pivot\nmove aside arm\nmove back arm\ntighten pivot\nfit new pipe-ring\nconnect pipe\nclose dump',
  ],
  [
    '',
    'support table with jack\nremove beam-bolts\nremove beam\nremove beam-two\nrefit beam\nrefit beam-two\nfit beam-bolts by hand\ntighten beam-bolts\nlower table',
  ],
  ['', 'support table with jack\nremove beam-bolts\nremove beam\nrefit beam\nfit beam-bolts\nremove jack'],
  [
    '',
    'raise table with hoist\nunbolt table\nlower table\nraise table with hoist\nbolt up table\nlower table',
  ],
  ['', 'lock pulley with peg-two\nunlock pulley\nturn frame-wheel'],
  ['', 'fit peg\nremove peg\nturn pulley\nturn frame-wheel'],
  [
    '',
    'for each side in left, right { mark jaws #side\nunbolt jaws #side\nremove jaw-rings #side and discard\nfit new jaw-rings #side\nrefit jaws #side }\nfit new jaw-bolts',
  ],
  ['', 'close knob\nopen knob'],
  ['', 'open knob\nclose knob'],
  ['', 'do shutdown\nunbolt table\nbolt up table\nrestore mains'],
  ['starts with mains isolated', 'prove mains safe\nrestore mains'],
  ['starts with mains isolated', 'lock out main-switch\nunlock main-switch\nrestore mains'],
  ['starts with coolant drained', 'let cool coolant\nfill coolant'],
  ['ends with coolant drained', 'drain coolant'],
  ['ends with mains isolated', 'isolate mains\nlock out main-switch\nunlock main-switch'],
  ['ends with table off', 'unbolt table'],
  ['starts with table off', 'bolt up table'],
  ['starts with table off', 'refit table\nfit table-screws by hand\ntighten table-screws'],
  ['starts with all of table off', 'refit table\nfit table-screws by hand\ntighten table-screws'],
  [
    '',
    'remove outer\nremove mid\nremove inner\ntrial fit inner\ntrial fit mid\nmeasure gap between inner and mid { below 1 mm { } from 1 mm { } }\nremove mid\nremove inner\nrefit inner\nrefit mid\nrefit outer',
  ],
  ['', 'bypass knob with peg\nremove peg\nadjust knob'],
  ['', 'if outer fitted { remove outer }\nif outer off { refit outer }'],
  ['only drive is belt', 'remove belt\nremove pulley\nrefit pulley\nrefit belt'],
  ['', 'remove belt\nrefit belt'],
  ['', 'remove hood\nrefit hood'],
  ['', 'pressurise air to 3 bar\nopen dump\nclose dump\nrun'],
  ['', 'relieve spring\nprove spring safe\nrun'],
  ['', 'drain coolant\nevacuate coolant\nfill coolant\ninflate air to 2 bar'],
  ['', 'remove outer and mid\nclean inner\nrefit mid and outer'],
  ['', 'remove mid and outer\nclean inner\nrefit outer and mid'],
  ['', 'remove outer\nremove mid and inner\nrefit inner and mid\nrefit outer'],
  ['', 'open tap-a, tap-b\nclose tap-a, tap-b\nfill coolant'],
  ['', 'when drive is belt { remove belt }\nremove pulley\nrefit pulley\nwhen drive is belt { refit belt }'],
  [
    '',
    'measure wear of outer { below 1 mm { } 1..2 mm { remove outer\nrefit outer } over 2 mm { remove outer and discard\nfit new outer } }',
  ],
  ['', 'inspect outer for "cracks" { sound { } cracked { stop "Order one." } }\nremove outer\nrefit outer'],
  ['', 'remove outer\ninspect outer for "cracks" { sound { refit outer } cracked { stop "Order one." } }'],
  ['', 'if "wet" { open tap-a\nclose tap-a } otherwise { open vent\nclose vent }'],
  ['', 'unbolt table\ncontinues'],
  ['', 'step "x" { unbolt table }\nstep "y" { bolt up table }'],
  ['', 'hold "gas" { unbolt table\nbolt up table }'],
  ['', 'unbolt table and discard\nfit new table\nfit table-screws'],
  ['', 'remove table-screws and discard\nremove table\nrefit table\nfit new table-screws'],
  ['', 'task a { unbolt table }\ntask b { bolt up table }\ndo a\ndo b'],
  ['', 'loosen door-screws\ntighten door-screws\ntighten door-screws pass 100 %'],
  ['', 'loosen head-bolts\ntighten head-bolts to stage 1\ntighten head-bolts to stage 2\ntighten head-bolts'],
  [
    '',
    'loosen head-bolts\ntighten head-bolts to stage 1\nloosen head-bolts\ntighten head-bolts to stage 1\ntighten head-bolts to stage 2',
  ],
  [
    '',
    'loosen table-screws\ntighten table-screws until "snug"\nback off table-screws 1/6 turn\ntighten table-screws',
  ],
  ['', 'clean outer\ncoat outer\nlubricate outer\nmark outer\nadjust outer\nalign outer'],
  ['', 'send outer for "x"\nremove outer\nsend outer for "x"\nrefit outer'],
  ['', 'support table with jack\nraise table with hoist\nlower table'],
  ['', 'remove outer\nremove mid\nmove aside inner\nmove back inner\nrefit mid\nrefit outer'],
  ['starts with table off, air relieved ends with table off', 'relieve air\nprove air safe'],
  ['starts with outer off', 'remove mid\nrefit mid\nrefit outer'],
  ['starts with outer aside', 'move back outer'],
  ['starts with table-screws loose', 'tighten table-screws'],
  ['starts with pipe disconnected, air relieved', 'connect pipe'],
  ['ends with knob closed', 'close knob'],
  ['ends with table-screws loose', 'loosen table-screws'],
];

/** The texts of the right jobs, each with its machine. */
export const RIGHT_JOBS: readonly string[] = JOBS.map(
  ([headers, steps]) => `${MILL}\nprocedure job for mill ${headers} {\n${steps}\n}\n`,
);
