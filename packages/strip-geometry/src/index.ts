// Outlines: what a cutter's cookie edge looks like.

export { checkOutline } from './check-outline.js';
export { type Bounds, bounds, perimeter, signedArea } from './measure.js';
export type {
  Arc,
  CubicCurve,
  EllipticalArc,
  Line,
  Outline,
  Point,
  QuadraticCurve,
  Segment,
} from './outline.js';
export { OutlineError, type OutlineFault } from './outline-error.js';
export {
  arc,
  arcBetween,
  cubic,
  ellipticalArc,
  headingAt,
  headingAtEnd,
  headingAtStart,
  lengthOf,
  line,
  pointAt,
  quadratic,
  reversed,
  tightestRadius,
  totalTurn,
} from './segment.js';
export { mirrored, moved, scaled, turned } from './transform.js';

// Families: outlines drawn from a few sizes.

export { acorn } from './outlines/acorn.js';
export { arrow } from './outlines/arrow.js';
export { bell } from './outlines/bell.js';
export { circle } from './outlines/circle.js';
export { crescent } from './outlines/crescent.js';
export { ellipse } from './outlines/ellipse.js';
export { families, familyNamed } from './outlines/families.js';
export type {
  OutlineFamily,
  OutlineSizes,
  SizeField,
  SizeKind,
  SizeValue,
} from './outlines/family.js';
export { fish } from './outlines/fish.js';
export { flower } from './outlines/flower.js';
export { gingerbreadFigure } from './outlines/gingerbread-figure.js';
export { heart } from './outlines/heart.js';
export { house } from './outlines/house.js';
export { leaf } from './outlines/leaf.js';
export { letter } from './outlines/letter.js';
export { oval } from './outlines/oval.js';
export { plusSign } from './outlines/plus-sign.js';
export { polygon } from './outlines/polygon.js';
export { rectangle } from './outlines/rectangle.js';
export { regularPolygon } from './outlines/regular-polygon.js';
export { sailboat } from './outlines/sailboat.js';
export { star } from './outlines/star.js';
export { teardrop } from './outlines/teardrop.js';
export { tree } from './outlines/tree.js';

// Drawings: outlines read from SVG, and traces fitted with few lines and arcs.

export { deviationBetween } from './fitting/deviation.js';
export { FITTING_TOLERANCE, fitTrace, isTraced } from './fitting/fit-trace.js';
export type { Ignorable } from './svg/drawn-shapes.js';
export { readSvg, type SvgOptions } from './svg/read-svg.js';
export { SvgError, type SvgFault, type SvgPlace } from './svg/svg-error.js';

// Bend rules: how metal goes round a bend.

export { type Airframe, type AirframePrint, airframe } from './bend-rules/airframe.js';
export { BendError, type BendFault } from './bend-rules/bend-error.js';
export type { BendRule } from './bend-rules/bend-rule.js';
export { type Handbook, type HandbookMetal, handbook } from './bend-rules/handbook.js';
export { type NeutralAxis, neutralAxis } from './bend-rules/neutral-axis.js';
export {
  type BendRuleField,
  type BendRuleKind,
  type BendRuleSizes,
  bendRuleNamed,
  bendRules,
} from './bend-rules/rules.js';
export { setback } from './bend-rules/setback.js';
export { type SteelStandard, steelFactor, steelStandard } from './bend-rules/steel-standard.js';
export { zeroThickness } from './bend-rules/zero-thickness.js';
export { compareRules, type RuleComparison } from './compare-rules.js';

// Strips: the flat metal that an outline is bent from.

export {
  type BendRun,
  type CurveRun,
  type Development,
  type DevelopOptions,
  develop,
  type FlatRun,
  type Run,
} from './develop.js';
export type { MetalSide } from './metal-side.js';
export { placeSeam, startAtSeam } from './seam.js';
export { SEAM_TURN_LIMIT, type SeamPlace, type SeamRoom } from './seam-place.js';
export {
  type BendMark,
  type CutterSpec,
  type FormedCurve,
  makeStrip,
  type SizeFace,
  type Strip,
} from './strip.js';
export { StripError } from './strip-error.js';

// Metal: how thick a sheet is, what it weighs, and whether it may touch food.

export {
  BASE_BOX_SQUARE_INCHES,
  baseWeightPerSquareMetre,
  baseWeightThickness,
} from './metal/base-weight.js';
export { copperThickness, copperWeights } from './metal/copper-weight.js';
export { MetalError } from './metal/metal-error.js';
export {
  type FoodContact,
  foodWarning,
  type Metal,
  metalNamed,
  metals,
  sheetWeight,
} from './metal/metals.js';
export { type GaugeTable, gaugesOf, gaugeThickness } from './metal/sheet-gauge.js';
export { type SheetThickness, sheetThickness } from './metal/sheet-thickness.js';

// Edges: what is done to the edge that does not cut.

export { doubleHem } from './edges/double-hem.js';
export type { EdgeKind, EdgeTreatment } from './edges/edge-treatment.js';
export { edgeTreatmentNamed, edgeTreatments } from './edges/edge-treatments.js';
export type { HemFace } from './edges/hem-face.js';
export { rawEdge } from './edges/raw-edge.js';
export { singleHem } from './edges/single-hem.js';
export { wiredEdge } from './edges/wired-edge.js';
export type { NamedLength, NamedLengths } from './named-length.js';

// Seams: how the ends of a strip are joined.

export { buttJoint } from './seams/butt-joint.js';
export { groovedSeam } from './seams/grooved-seam.js';
export { plainLap } from './seams/plain-lap.js';
export type { EndCut, Seam, SeamedStrip, SeamKind, SeamLine } from './seams/seam.js';
export { seamNamed, seams } from './seams/seams.js';
export { tuckedTab } from './seams/tucked-tab.js';

// Notches: how the hem is cut so that the strip can be bent.

export { type HemStage, hemAtBend, USUAL_HEM_STAGE } from './notches/hem-side.js';
export { type ClosingBend, leastHalfAngle } from './notches/least-half-angle.js';
export type { HemNotice, Notch } from './notches/notch.js';
export { type NotchOptions, USUAL_HALF_ANGLE, USUAL_STRAIN } from './notches/notch-options.js';
export { notchesOf, notchNotices } from './notches/notches.js';
export {
  curveNotices,
  type ReliefSnip,
  reliefRadius,
  reliefSnips,
} from './notches/relief-snips.js';

// Flat pattern: what to cut and mark on the blank, as data.

export {
  type FlatPattern,
  flatPattern,
  type PatternBend,
  type PatternLine,
} from './flat-pattern/flat-pattern.js';
export type { PatternLabel } from './flat-pattern/labels.js';
export type { ScribeLine } from './flat-pattern/scribe-lines.js';

// Marks and the refold check: what a hand follows, and what comes of it.

export {
  type CrowdedMarks,
  type CurveAtMark,
  type MarkedOut,
  markOut,
  type StripMark,
} from './marks/mark-out.js';
export { roundMarks } from './marks/round-marks.js';
export {
  type FoldFigures,
  type Refold,
  type RefoldOptions,
  refold,
  type ToldCurve,
  type ToldFold,
} from './refold/refold.js';

// Workability: what is hard to make by hand or to use.

export { coarseMarks } from './workability/coarse-marks.js';
export { leastRadii, type WorkabilityLimits } from './workability/limits.js';
export type {
  WorkabilityCode,
  WorkabilityPlace,
  WorkabilityWarning,
} from './workability/warning.js';
export { checkWorkability } from './workability/workability.js';

// Sizing the other way round: the largest cutter that a length of stock gives.

export {
  type CutterWithoutOutline,
  type LargestOfFamily,
  type LargestOutline,
  largestOfFamily,
  largestThatFits,
} from './inverse-sizing.js';

// Splitting: a strip longer than the longest stock.

export { type SplitOptions, type StripPart, splitStrip } from './splitting/split-strip.js';
