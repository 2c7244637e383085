import { HANDLING_CAUTION } from '../../report/cautions.js';
import { PRINT_STYLE } from './print-style.js';
import { SCREEN_STYLE } from './screen-style.js';

/** Colours and letters of screen and paper alike. One accent; no fact by colour alone. */
const BOTH = `
:root { --paper: #ffffff; --ink: #1b2126; --soft: #4a545c; --line: #8b959c; --pale: #f3f1ee;
  --accent: #8a3b12; --on-accent: #ffffff; --pad: 1rem; color-scheme: light; }
*, ::before, ::after { box-sizing: border-box; }
html { font: 112.5%/1.45 'DejaVu Sans', Verdana, 'Noto Sans', sans-serif; overflow-wrap: anywhere;
  -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { margin: 0; background: var(--paper); color: var(--ink); }
h1, h2, p, ol, ul, figure { margin: 0; padding: 0; }
ol, ul { list-style: none; }
h1, h2, .work, .kind { font-family: 'DejaVu Sans Condensed', 'Arial Narrow', 'Liberation Sans Narrow',
  'Roboto Condensed', sans-serif; font-weight: 700; line-height: 1.15; }
section > *, .head > * { margin-block: 0 .8rem; }
.head { margin-block: 0; }
[hidden] { display: none; }

.kind { letter-spacing: .14em; text-transform: uppercase; color: var(--accent); }
.work { display: table; margin-bottom: .45rem; padding: .12rem 1.5rem .12rem .6rem; background: var(--accent);
  color: var(--on-accent); clip-path: polygon(0 0, 100% 0, calc(100% - .75rem) 50%, 100% 100%, 0 100%); }

table { width: 100%; border-collapse: collapse; font-variant-numeric: tabular-nums; }
caption { padding: .3rem 0; text-align: left; font-weight: 700; }
th, td { padding: .4rem .5rem; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top; }
th { border-bottom: 2px solid var(--ink); font-size: .85em; }
th, td { white-space: nowrap; }
.words { min-width: 7em; white-space: normal; }
.figure { text-align: right; }
.figures { width: auto; min-width: min(24rem, 100%); }
.sum td { border-top: 2px solid var(--ink); font-weight: 700; }
bdi { unicode-bidi: isolate; }

.caution { padding: .6rem .8rem .6rem 1.8rem; border: 2px solid var(--ink);
  background: repeating-linear-gradient(-45deg, var(--ink) 0 .35rem, transparent .35rem .7rem) 0 0 / 1.1rem 100% no-repeat; }
.caution-word { font-weight: 700; text-transform: uppercase; letter-spacing: .08em; }

.steps label { display: flex; gap: .9rem; align-items: flex-start; padding: .7rem .5rem; cursor: pointer; }
.steps li { border-top: 1px solid var(--line); }
.steps li:last-child { border-bottom: 1px solid var(--line); }
.steps input { appearance: none; flex: none; position: relative; width: 2rem; height: 2rem; margin: 0;
  border: .18rem solid var(--ink); border-radius: .25rem; background: var(--paper); cursor: pointer; }
.steps input:checked::after { content: ''; position: absolute; left: .5rem; top: .02rem; width: .62rem; height: 1.2rem;
  border: solid var(--ink); border-width: 0 .26rem .26rem 0; transform: rotate(40deg); }
.say { flex: 1; min-width: 0; padding-top: .2rem; }
.do, .detail { display: block; }
.do { font-weight: 700; }
.detail { color: var(--soft); font-size: .9em; }

figure svg { display: block; background: #ffffff; }
figcaption { padding-top: .4rem; color: var(--soft); font-size: .9em; }
`;

/** What stands in the one style element of a sheet. */
export const STYLE = `${BOTH}${SCREEN_STYLE}${PRINT_STYLE(HANDLING_CAUTION)}`;
