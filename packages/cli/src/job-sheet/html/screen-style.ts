/** On a screen, from a phone to a bench computer: large targets, one column, contents beside it where there is room. */
export const SCREEN_STYLE = `
@media screen {
  body { max-width: 82rem; margin: 0 auto; padding: 0 var(--pad) 3rem; }
  body::before { content: ''; display: block; height: 1.4rem; margin: 0 calc(-1 * var(--pad));
    background: linear-gradient(90deg, var(--ink) 2px, transparent 2px) 0 0 / 8rem 100% repeat-x,
      linear-gradient(90deg, var(--ink) 1px, transparent 1px) 0 0 / 4rem 75% repeat-x,
      linear-gradient(90deg, var(--ink) 1px, transparent 1px) 0 0 / 2rem 55% repeat-x,
      linear-gradient(90deg, var(--ink) 1px, transparent 1px) 0 0 / 1rem 35% repeat-x; }
  header { padding: 1.2rem 0; }
  h1 { font-size: clamp(1.7rem, 6vw, 2.9rem); }
  h2 { font-size: 1.5rem; }
  .summary { display: flex; flex-wrap: wrap; gap: .2rem 1.6rem; padding-top: .5rem; color: var(--soft); }
  section { padding: 1.6rem 0 1.2rem; border-top: 3px solid var(--ink); scroll-margin-top: 0; }
  main:focus { outline: none; }
  a { color: inherit; text-decoration-color: var(--accent); text-decoration-thickness: .12em; text-underline-offset: .2em; }
  :focus-visible { outline: .22rem solid var(--accent); outline-offset: .15rem; }
  .skip { position: absolute; left: var(--pad); top: 0; z-index: 1; padding: .8rem 1rem; background: var(--ink);
    color: var(--paper); transform: translateY(-110%); }
  .skip:focus { transform: none; }

  nav { padding-bottom: 1.5rem; }
  nav h2 { font-size: 1.1rem; }
  #sheet\\.done { padding: .3rem 0; font-weight: 700; }
  .contents { counter-reset: stretch; }
  .contents > li { counter-increment: stretch; border-top: 1px solid var(--line); }
  .contents > li > a::before { content: counter(stretch) ' '; display: inline-block; min-width: 1.8rem; color: var(--accent); }
  .contents > li > a { font-weight: 700; }
  .contents a { display: block; padding: .65rem .2rem; text-decoration: none; }
  .contents a:hover { text-decoration: underline; text-decoration-color: var(--accent); }
  .contents ol { padding: 0 0 .5rem 2rem; }
  .contents ol a { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 2; overflow: hidden;
    padding: 0; margin: .5rem .2rem; font-size: .9em; }
  .contents ol li { padding: .2rem 0; }
  .contents summary { min-height: 2.8rem; padding: .5rem .2rem .5rem 2rem; color: var(--soft); font-size: .9em; cursor: pointer; }

  .steps label { min-height: 3.5rem; }
  .steps label:hover { background: var(--pale); }
  .steps label:has(:checked) .do { font-weight: 400; }
  .over { display: none; }
  figure svg { max-width: 100%; height: auto; }
  .to-fit svg { width: 100%; }
  footer { padding-top: 1.6rem; border-top: 3px solid var(--ink); }
  button { min-height: 3.2rem; margin-top: .8rem; padding: .6rem 1.2rem; border: .14rem solid var(--ink); border-radius: .25rem;
    background: var(--paper); color: inherit; font: inherit; cursor: pointer; }
}
@media screen and (max-width: 40rem) {
  table { font-size: .9em; }
  th, td { padding-inline: .25rem; }
  .cards thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .figures { width: 100%; }
  .cards, .cards caption, .cards tbody { display: block; }
  .cards tr { display: grid; grid-template-columns: 1fr 1fr; gap: .1rem .8rem; padding: .6rem 0; border-bottom: 1px solid var(--line); }
  .cards td { display: block; min-width: 0; padding: .1rem 0; border: 0; text-align: left; white-space: normal; }
  .cards td::before { content: attr(data-heading); display: block; color: var(--soft); font-size: .8em; font-weight: 400; }
  .cards td:empty { display: none; }
  .cards .sum { border-top: 2px solid var(--ink); }
}
@media screen and (min-width: 64rem) {
  :root { --pad: 2rem; }
  body { display: grid; grid-template-columns: 17rem minmax(0, 1fr); column-gap: 3rem; align-items: start; }
  body::before { grid-column: 1 / -1; }
  header { grid-column: 1 / -1; }
  nav { position: sticky; top: 0; grid-row: 3 / span 2; max-height: 100vh; padding: 1rem .5rem 1rem 0; overflow: hidden auto; }
  main, footer { grid-column: 2; min-width: 0; }
}
@media screen and (prefers-color-scheme: dark) {
  :root { --paper: #15191d; --ink: #eef1f3; --soft: #b9c2c9; --line: #75808a; --pale: #22282d;
    --accent: #f2a573; --on-accent: #15191d; color-scheme: dark; }
}
@media (forced-colors: active) {
  .work { border: 1px solid; clip-path: none; }
}
`;
