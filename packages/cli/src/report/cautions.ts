/** What goes with every output that shows cutting. At most 80 columns. */
export const CUTTING_CAUTIONS: readonly string[] = [
  'Sheared edges cut: wear gloves and eye protection. Keep the guards on the shear',
  'and hands clear of its blade and hold-down.',
  'Metal and solder that touch food must be fit for food; wash cutters before use.',
  'Follow local codes and licensed practice.',
];

/** What goes with every list of metal to be handled. */
export const HANDLING_CAUTION = 'Sheared edges cut: wear gloves and eye protection.';
