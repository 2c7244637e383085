import { bounds } from '../measure.js';
import type { Loop } from './closed-loops.js';

/**
 * A name for each closed line: the id of what drew it, or else the name of the
 * element and a number. Where one element draws a line and others within it,
 * as for a ring, they are also called `outer` and `inner`; any that would
 * still share a name are numbered.
 */
export function loopNames(
  loops: readonly Loop[],
  roles: readonly LoopRole[] = loopRoles(loops),
): readonly string[] {
  const elements = [...new Set(loops.map(({ place }) => place))];
  const ofKind = new Map<string, number>();
  const base = new Map(
    elements.map((place) => {
      const number = (ofKind.get(place.element) ?? 0) + 1;
      ofKind.set(place.element, number);
      return [place, `${place.element} ${number}`];
    }),
  );
  const wanted = loops.map(({ id, place }, index) => {
    const name = id?.replace(/[\p{Cc}\s]+/gu, ' ').trim() || base.get(place) || place.element;
    const role = roles[index];
    return role === undefined ? name : `${name} ${role}`;
  });
  return numbered(wanted);
}

/** What a closed line is among those of one element: `inner` lines are the edges of holes. */
export type LoopRole = 'outer' | 'inner' | undefined;

/** For each line of an element that draws several: outer, inner, or neither. */
export function loopRoles(loops: readonly Loop[]): readonly LoopRole[] {
  const boxes = loops.map((loop) => bounds({ name: '', ...loop }));
  const siblings = new Map<object, number[]>();
  loops.forEach(({ place }, index) => {
    siblings.set(place, [...(siblings.get(place) ?? []), index]);
  });
  const roles: LoopRole[] = loops.map(() => undefined);
  for (const group of siblings.values()) {
    const areas = group.map((index) => (boxes[index]?.across ?? 0) * (boxes[index]?.high ?? 0));
    const largest = group[areas.indexOf(Math.max(...areas))];
    const around = largest === undefined ? undefined : boxes[largest];
    const others = group.filter((index) => index !== largest);
    const within = others.every((index) => {
      const box = boxes[index];
      return (
        box !== undefined &&
        around !== undefined &&
        box.left >= around.left &&
        box.right <= around.right &&
        box.bottom >= around.bottom &&
        box.top <= around.top
      );
    });
    if (largest !== undefined && others.length > 0 && within) {
      roles[largest] = 'outer';
      for (const index of others) {
        roles[index] = 'inner';
      }
    }
  }
  return roles;
}

function numbered(names: readonly string[]): readonly string[] {
  const total = new Map<string, number>();
  for (const name of names) {
    total.set(name, (total.get(name) ?? 0) + 1);
  }
  const taken = new Set(names.filter((name) => total.get(name) === 1));
  const next = new Map<string, number>();
  return names.map((name) => {
    if (total.get(name) === 1) {
      return name;
    }
    let number = next.get(name) ?? 0;
    let candidate: string;
    do {
      number += 1;
      candidate = `${name} ${number}`;
    } while (taken.has(candidate));
    next.set(name, number);
    taken.add(candidate);
    return candidate;
  });
}
