import { Enumeration, type EnumerationRequest } from './enumeration.js';
import type { Yield } from './yield.js';

/** What a box can yield by guillotine cuts without limit. */
export function yieldsFreely(request: EnumerationRequest): readonly Yield[] {
  const enumeration = new Enumeration(request);
  const within = (length: number, width: number): readonly Yield[] =>
    enumeration.once(`${length} x ${width}`, length, width, (frontier) => {
      enumeration.exact(frontier, length, width);
      for (const runs of ['along', 'across'] as const) {
        const level = runs === 'along';
        const breadth = level ? width : length;
        const part = (extent: number) => (level ? within(length, extent) : within(extent, width));
        for (const { near, far } of enumeration.divisions(length, width, runs)) {
          // Two parts may change places.
          if (far > 0 && near < far) continue;
          const cut = { runs, breadth, extent: near };
          enumeration.both(frontier, cut, part(near), far === 0 ? undefined : part(far));
        }
      }
    });
  return within(request.box.length, request.box.width);
}
