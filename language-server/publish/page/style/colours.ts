/**
 * The colours, by what they are for, in light, dark and high contrast. Every pair of text and ground has a contrast of
 * at least 7 to 1 (WCAG 2.2, 1.4.6), for workshops are dark and yards are bright; a browser test measures it.
 */
export const COLOURS = `
:root {
  color-scheme: light dark;
  --paper: #fbfaf6; --sheet: #ffffff; --ink: #1b2328; --soft: #3b474d; --line: #c9cfcc; --strong-line: #7d8a8c;
  --plate: #e7ecea; --accent: #0b5460; --accent-ground: #e3eff0; --link: #0b5460; --focus: #b3006b;
  --done: #10502a; --done-ground: #e8f3ea; --stop: #8a0a16; --stop-ground: #fbeaea; --watch: #5a3600; --watch-ground: #fdf3dc;
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #14191b; --sheet: #1b2225; --ink: #e9edeb; --soft: #b4bfc0; --line: #3a464a; --strong-line: #86959a;
    --plate: #263034; --accent: #8fd3dd; --accent-ground: #1d3438; --link: #9bdbe4; --focus: #ff9bd2;
    --done: #9fdcae; --done-ground: #1c3323; --stop: #ffb1b1; --stop-ground: #3d1d20; --watch: #f5cf86; --watch-ground: #382c14;
  }
}
@media (prefers-contrast: more) {
  :root {
    --paper: #ffffff; --sheet: #ffffff; --ink: #000000; --soft: #1c1c1c; --line: #000000; --strong-line: #000000;
    --plate: #ffffff; --accent: #00343d; --accent-ground: #ffffff; --link: #00343d; --focus: #8a0052;
    --done: #00401a; --done-ground: #ffffff; --stop: #7a0010; --stop-ground: #ffffff; --watch: #4f3000; --watch-ground: #ffffff;
  }
}
@media (prefers-contrast: more) and (prefers-color-scheme: dark) {
  :root {
    --paper: #000000; --sheet: #000000; --ink: #ffffff; --soft: #eeeeee; --line: #ffffff; --strong-line: #ffffff;
    --plate: #000000; --accent: #b9f3fb; --accent-ground: #000000; --link: #b9f3fb; --focus: #ffc2e4;
    --done: #c3f7cf; --done-ground: #000000; --stop: #ffd0d0; --stop-ground: #000000; --watch: #ffe7b5; --watch-ground: #000000;
  }
}
`;
