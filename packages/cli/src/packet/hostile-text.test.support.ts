import fc from 'fast-check';

/** In every hostile text, so that it is found where it does not belong. */
export const MARKER = 'Zq';

const PIECES = [
  ...['"', "'", '`', '<', '>', '&', '&lt;', '&#60;', '<!--', '-->', ']]>', '<![CDATA[', '<?x ?>'],
  ...[
    '</text>',
    '</svg>',
    '</script>',
    '<script>',
    '<img src=x onerror=',
    '<b>',
    '</td>',
    '</title>',
  ],
  ...[
    '{{',
    '${',
    '%s',
    '%00',
    '\\',
    '/',
    '..',
    '../',
    '../../',
    'C:\\',
    '~',
    ':',
    '|',
    '*',
    '?',
    '.',
  ],
  ...['=1+1', '+1', '-1', '@SUM(A1)', ',', ';', '\u3000', '\u00a0', '\u00e9', 'e\u0301', '\u0e33'],
  ...[
    '\u05dc\u05d1',
    '\u0642\u0644\u0628',
    '\u30cf\u30fc\u30c8',
    '\u{1f36a}',
    '\u2764',
    '\u{20bb7}',
  ],
  ...[
    'javascript:',
    'data:',
    'url(',
    '()',
    'con',
    'nul',
    '$(',
    '# ',
    '- ',
    '!',
    '\ufffd',
    '\ufffe',
  ],
];

/** One line of text that an order may have for a name, and that some kind of file stumbles over. */
export const hostileTexts = fc
  .tuple(
    fc.array(fc.oneof(fc.constantFrom(...PIECES), fc.string({ unit: 'grapheme', maxLength: 4 })), {
      minLength: 1,
      maxLength: 8,
    }),
    fc.nat(),
  )
  .map(([pieces, at]) => {
    const place = at % (pieces.length + 1);
    const text = [...pieces.slice(0, place), MARKER, ...pieces.slice(place)].join('');
    return cut(text).trim();
  })
  // What a name may not have is refused by the reader of orders, which is tested there.
  .filter((text) => text.includes(MARKER) && !/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u.test(text));

const LONGEST = 56;

function cut(text: string): string {
  if (text.length <= LONGEST) return text;
  const short = [...text].reduce(
    (done, sign) => (done.length + sign.length > LONGEST ? done : done + sign),
    '',
  );
  return short;
}
