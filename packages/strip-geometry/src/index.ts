export type { BendRule } from './bend-rules/bend-rule.js';
export type { Arc, Line, Outline, Point, Segment } from './outline.js';
export type { OutlineFamily, OutlineSizes, SizeField, SizeKind } from './outlines/family.js';
export type { BendMark, CutterSpec, FormedCurve, Strip } from './strip.js';
