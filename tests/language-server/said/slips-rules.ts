/** Rules of the house that are broken: every scope, required and forbidden, over steps and states. And waivers of checks. */
const CYCLE = 'remove bolts\nremove cover\nrefit cover\nfit bolts';

/** The rule, its title as it is written, headers, steps. */
const RULES: readonly (readonly [rule: string, steps: string, headers?: string, title?: string])[] = [
  ['before loosen bolts require strap fitted', CYCLE],
  ['before cover off require strap fitted', CYCLE],
  ['before loosen bolts require turn shaft', CYCLE],
  ['before cover off require turn shaft', CYCLE],
  ['before loosen bolts never strap fitted', `lock shaft with strap\n${CYCLE}\nunlock shaft`],
  ['before cover off never strap fitted', `lock shaft with strap\n${CYCLE}\nunlock shaft`],
  ['before loosen bolts never turn shaft', `turn shaft\n${CYCLE}`],
  ['before cover off never turn shaft', `turn shaft\n${CYCLE}`],
  ['after loosen bolts require strap fitted', CYCLE],
  ['after cover off require strap fitted', CYCLE],
  ['after loosen bolts require turn shaft', CYCLE],
  ['after cover off require turn shaft', CYCLE],
  ['after loosen bolts never strap fitted', `${CYCLE}\nlock shaft with strap\nunlock shaft`],
  ['after cover off never strap fitted', `${CYCLE}\nlock shaft with strap\nunlock shaft`],
  ['after loosen bolts never turn shaft', `${CYCLE}\nturn shaft`],
  ['after cover off never turn shaft', `${CYCLE}\nturn shaft`],
  ['while cover off require strap fitted', CYCLE],
  ['while cover off require turn shaft', CYCLE],
  ['while cover off never strap fitted', `lock shaft with strap\n${CYCLE}\nunlock shaft`],
  ['while cover off never turn shaft', 'unbolt cover\nturn shaft\nbolt up cover'],
  ['always require strap fitted', 'clean bed'],
  ['always require cover fitted', CYCLE],
  ['always require turn shaft', 'clean bed'],
  ['never turn shaft', 'turn shaft'],
  ['never strap fitted', 'lock shaft with strap\nunlock shaft'],
  ['never cover off', CYCLE],
  // Things that stand so from the start.
  ['never cover off', 'refit cover\nfit bolts', 'starts with cover, bolts off'],
  ['always require cover fitted', 'refit cover\nfit bolts', 'starts with cover, bolts off'],
  ['while cover off require strap fitted', 'refit cover\nfit bolts', 'starts with cover, bolts off'],
  ['while cover off never bolts off', 'refit cover\nfit bolts', 'starts with cover, bolts off'],
  ['while cover off require turn shaft', 'refit cover\nfit bolts', 'starts with cover, bolts off'],
  ['while cover off require turn shaft', 'remove bolts\nremove cover', 'ends with cover, bolts off'],
  ['after cover off require turn shaft', 'refit cover\nfit bolts', 'starts with cover, bolts off'],
  ['after cover off require strap fitted', 'refit cover\nfit bolts', 'starts with cover, bolts off'],
  ['after cover off never bolts off', 'refit cover\nfit bolts', 'starts with cover, bolts off'],
  // Amounts, times, several things, `not`.
  ['always require turn shaft 2 turns', 'turn shaft 1 turn'],
  ['always require sign', 'clean bed'],
  ['always require sign', 'clean bed\nallow rule-broken because "Another job is signed for."'],
  ['always require sign', 'allow rule-broken because "Another job is signed for."\nclean bed'],
  ['always require sign', 'task t "T" {\nclean bed\nallow rule-broken because "Signed there."\n}'],
  ['before loosen bolts require clean bed and shaft', CYCLE],
  ['before loosen bolts require turn shaft 2 times', `turn shaft\n${CYCLE}`],
  ['never bolts not tight', CYCLE],
  ['never remove any part', CYCLE],
  ['never any part off', CYCLE],
  ['never any fastener loose', 'loosen bolts #1\ntighten bolts'],
  ['never clean bed, shaft, cover, bolts', 'clean shaft, bolts'],
  ['always require any part fitted', CYCLE],
  ['never open any connection of any system with pressure', 'relieve air\ndisconnect hose\nconnect hose'],
  // How a rule is called.
  ['never turn shaft', 'turn shaft', '', ''],
  ['never turn shaft', 'turn shaft', '', '" "'],
  ['never turn shaft', 'turn shaft', '', '"Stop. Then wait."'],
  ['never turn shaft', 'turn shaft', '', '"Leave it alone"'],
  ['never turn shaft', 'turn shaft', '', '" Leave it alone. "'],
  // Cases.
  ['never turn shaft', 'when size is small { turn shaft }'],
  ['never turn shaft', 'when size is small { turn shaft }\nwhen size is large { turn shaft }'],
  // What applies to nothing.
  ['before remove any part of any system with live require that system proved safe', 'clean bed'],
  ['never turn nothing-known', 'clean bed'],
];

const WAIVERS: readonly string[] = [
  'remove cover\nallow left-off because "It is fetched by others."',
  'clean bed\nallow left-off because "It is fetched by others."',
  'task t "T" {\nclean bed\nallow left-off because "It is fetched by others."\n}',
  'allow still-held because " "\nremove cover',
  'allow still-held because "…"\nunbolt cover\nbolt up cover',
  'allow still-held\nremove cover',
  'allow because "It is light."\nremove cover',
  'allow still-hold because "It is light."\nremove cover',
  'allow file-missing because "It is there."\nclean bed',
  'allow use-cycle because "It ends."\nclean bed',
  'allow undecided because "It is light."\nclean bed',
  'allow waiver-unused because "It may come."\nclean bed',
  'allow waiver-refused because "It may come."\nclean bed',
  'allow bad-character because "It is a dash."\nclean bed',
  'allow tool-failure because "Never mind."\nclean bed',
  'allow rule-broken because "It may turn."\nturn shaft',
  'turn shaft\nallow rule-broken because "It may turn."',
];

const machine = (rule: string) => `machine m "M" {
  variant size: small, large
  part bed "bed" fixed
  part cover "cover" on bed  held by bolts
  fastener bolts "bolts" x2  torque 8 N·m
  part shaft "shaft" on bed  fixed
  tool strap "strap" locks shaft
  system air "air" pressure 8 bar
  connection hose "hose" joins shaft to bed  opens air
  rule r ${rule}
}
`;

export const RULE_SLIPS: readonly { name: string; text: string }[] = [
  ...RULES.map(([rule, steps, headers = '', title = '"Once, a strap slipped."']) => ({
    name: `rule ${JSON.stringify(`${title} ${rule}`)} ${JSON.stringify(headers)} ${JSON.stringify(steps)}`,
    text: `${machine(`${title} {\n${rule}\n}`)}procedure p "Work" for m ${headers} {\n${steps}\n}\n`,
  })),
  ...WAIVERS.map((steps) => ({
    name: `waiver ${JSON.stringify(steps)}`,
    text: `${machine('"Once, a strap slipped." { never turn shaft }')}procedure p "Work" for m {\n${steps}\n}\n`,
  })),
];
