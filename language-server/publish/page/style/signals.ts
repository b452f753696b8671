/**
 * Signal words and signs. Colours after ANSI Z535.1 / ISO 3864-4 (red, orange, yellow, blue; from memory): they stay
 * what they are in dark and forced colours, because the colour is part of the sign. What a sign refers to is matched by
 * its own class alone: it is seen without what it stands in.
 */
export const SIGNALS = `
.sig-danger { --signal: #a30a1b; --on-signal: #ffffff; }
.sig-warning { --signal: #f28500; --on-signal: #000000; }
.sig-caution { --signal: #ffd200; --on-signal: #000000; }
.sig-notice { --signal: #08508f; --on-signal: #ffffff; }
.sig-note { --signal: var(--plate); --on-signal: var(--ink); }
.military.sig-warning { --signal: #a30a1b; --on-signal: #ffffff; }
.panel { border: .1875rem solid var(--signal); background: var(--sheet); margin: .75rem 0; border-radius: .2rem; overflow: hidden; }
.panel .signal { display: flex; flex-wrap: wrap; align-items: center; gap: .25rem .6rem; margin: 0; padding: .3rem .75rem; background: var(--signal); color: var(--on-signal); forced-color-adjust: none; }
.panel .signal b { font-size: 1.2rem; letter-spacing: .06em; line-height: 1.3; }
.panel .signal .sign { width: 1.9rem; height: 1.9rem; }
.panel .about { font-weight: 600; }
.panel .said { display: flex; gap: .75rem; padding: .6rem .75rem; align-items: flex-start; }
.panel .said p { margin: 0; font-weight: 500; }
.panel .said .sign { flex: none; width: 2.75rem; height: 2.75rem; }
.military .signal { justify-content: center; }
.word { display: inline-block; padding: 0 .4rem; background: var(--signal); color: var(--on-signal); letter-spacing: .05em; forced-color-adjust: none; }
.sign { flex: none; forced-color-adjust: none; stroke: #000; fill: none; stroke-width: 2; stroke-linecap: round; stroke-linejoin: round; }
.sign-edge { fill: #ffd200; stroke: #000; stroke-width: 3; }
.sign-fill { fill: #000; stroke: none; }
.signs { position: absolute; }
.note { border-left: .25rem solid var(--strong-line); padding: .25rem .75rem; margin: .75rem 0; }
.note p { margin: 0; }
.note-word { letter-spacing: .04em; }
.glance { list-style: none; padding: 0; display: grid; gap: .5rem; }
.glance li { display: flex; gap: .75rem; border: 1px solid var(--line); background: var(--sheet); padding: .6rem .75rem; border-radius: .2rem; }
.glance p { margin: 0 0 .2rem; }
.at { font-size: .9rem; color: var(--soft); }
`;
