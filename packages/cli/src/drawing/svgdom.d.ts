// svgdom ships no types; this names only what is used of it.
declare module 'svgdom' {
  export interface SvgdomElement {
    readonly outerHTML: string;
  }
  export interface SvgdomWindow {
    readonly document: { readonly documentElement: SvgdomElement };
  }
  export function createSVGWindow(): SvgdomWindow;
}
