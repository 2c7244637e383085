/** A drawing of one element with two outlines: a ring 80 mm across, its hole 40 mm. */
export const RING = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">
  <path id="ring" fill-rule="evenodd" d="M10 50 A40 40 0 0 1 90 50 A40 40 0 0 1 10 50 Z
    M30 50 A20 20 0 0 1 70 50 A20 20 0 0 1 30 50 Z"/>
</svg>
`;

/** A drawing whose only path is open, in line 2 and column 3. */
export const OPEN = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm">
  <path id="hook" d="M0 0 L40 0 L40 40"/>
</svg>
`;
