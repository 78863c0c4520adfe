/**
 * What a survey returns. The JSON part is public (`coveline.survey/1`): keys are stable, additions are free.
 * Lengths in mm, areas in cm2, volumes in mL, angles in degrees; coordinates in the frame that was surveyed (+Z up).
 */
import type { Vec3 } from '@coveline/model';
import type { ModelHealth } from './health/health.ts';

export type MeasureName =
  | 'standingLiquid'
  | 'flatFaces'
  | 'insideCorners'
  | 'narrowGaps'
  | 'hollows'
  | 'fasteners'
  | 'handReach'
  | 'toolReach'
  | 'jetReach'
  | 'openSky'
  | 'overhead'
  | 'clearances';

/** A located thing that a measure found. */
export interface Place {
  /** Same geometry, same id: kind, a hash of parts and rounded position, and a counter for namesakes. */
  readonly id: string;
  /** Ids of the parts that form it, sorted. */
  readonly parts: readonly string[];
  readonly at_mm: Vec3;
  readonly bounds_mm: readonly [Vec3, Vec3];
  /** What the measure could not decide here, or had to assume; one sentence each. */
  readonly caveats?: readonly string[];
}

export interface Pool extends Place {
  /** The best number there is: `exact_mL` where there is one, else `columns_mL`. So are depth, area, deepest and spill. */
  readonly volume_mL: number;
  /** The same by columns; absent in results of earlier versions, whose `volume_mL` it was. */
  readonly columns_mL?: number;
  readonly depth_mm: number;
  /** Area of the liquid's surface. */
  readonly area_cm2: number;
  readonly deepest_mm: Vec3;
  /** Where the liquid first runs over. */
  readonly spill_mm: Vec3;
  /** By the exact method, where it was asked for and possible; a caveat says why where it was not. */
  readonly exact_mL?: number;
  /** columns_mL / exact_mL - 1: what the two methods differ by. */
  readonly difference?: number;
  /** With `sealedBelow_mm` set: what stands here when seams and tunnels are left as open as they are drawn. */
  readonly unsealed_mL?: number;
}

/** What stands on the machine at a tilt: a turn about the axis (x_deg, y_deg, 0) by the length of that vector. */
export interface TiltedTotal {
  readonly x_deg: number;
  readonly y_deg: number;
  readonly total_mL: number;
}

/** Standing liquid over tilts of the whole machine. */
export interface TiltRange {
  /** Tilts about either axis up to this make the range of installation. */
  readonly range_deg: number;
  /** Tilts in the range, by columns this far apart: to compare them with each other, not to be quoted. */
  readonly samples: readonly TiltedTotal[];
  readonly resolution_mm: number;
  /** Measured in full: level, the worst of the range, and the one that leaves least within `bestWithin_deg`. */
  readonly level: TiltedTotal;
  readonly worst: TiltedTotal;
  readonly best: TiltedTotal;
  readonly bestWithin_deg: number;
}

export interface FlatFace extends Place {
  readonly facing: 'up' | 'down';
  readonly area_cm2: number;
  /** Angle to the horizontal. */
  readonly slope_deg: number;
}

export interface InsideCorner extends Place {
  readonly length_mm: number;
  /** 0 for a sharp edge. */
  readonly radius_mm: number;
  /** Included angle through the air. */
  readonly angle_deg: number;
  readonly from: 'cad' | 'triangles';
  /** From triangles only: a fillet up to this radius could hide in a sharp-looking edge. */
  readonly couldHideRadius_mm?: number;
}

export interface NarrowGap extends Place {
  /** Smallest distance across the air. */
  readonly width_mm: number;
  readonly widest_mm: number;
  /** Deepest point behind the mouth, along the gap. */
  readonly depth_mm: number;
  readonly mouth_mm: number;
  /** Of one of the two walls. */
  readonly area_cm2: number;
}

/** Where two parts touch: a line that soil and liquid find by capillarity. */
export interface Joint extends Place {
  /** Length of the border of the contact that is open to the air. */
  readonly length_mm: number;
  readonly area_cm2: number;
  /** Neither part stands out beside most of the line. */
  readonly flush?: boolean;
}

export interface ClosedHollow extends Place {
  readonly volume_mL: number;
}

export interface BlindChannel extends Place {
  readonly depth_mm: number;
  readonly mouth_mm: number;
  /** depth / mouth */
  readonly ratio: number;
  /** A stepped bore: the piece whose own depth over its own bore is the largest, where that is more than `ratio`. */
  readonly inner?: { readonly bore_mm: number; readonly depth_mm: number; readonly ratio: number };
  readonly from: 'cad' | 'triangles';
}

/** A branch off a tube in which liquid flows by. */
export interface DeadLeg extends Place {
  /** The part that the branch begins in, and the one that closes its end. */
  readonly branchPart: string;
  readonly endPart: string;
  /** Bore of the main and of the branch. */
  readonly main_mm: number;
  readonly bore_mm: number;
  /** From the axis of the main to the closed end, along the branch. */
  readonly fromAxis_mm: number;
  /** From the inner wall of the main to the closed end. */
  readonly fromWall_mm: number;
  /** Lengths over the bore of the branch. */
  readonly ratioFromAxis: number;
  readonly ratioFromWall: number;
  readonly from: 'cad' | 'triangles';
}

/** A hollow member (tube, profile) whose inside is joined with the outside. */
export interface OpenMember extends Place {
  /** Of the hollow, along the member. */
  readonly length_mm: number;
  /** Diameter of the largest ball that passes the opening; 0 where none was found and yet the hollow is not sealed. */
  readonly mouth_mm: number;
  /** An end that nothing closes; a hole in the wall of a member with closed ends; a seam or slit that was not found. */
  readonly through: 'end' | 'hole' | 'seam';
  readonly openEnds: number;
  /** Area of its inner walls, a lower estimate: near an open end they see out and do not count. */
  readonly inner_cm2: number;
}

/** How a thing was recognised, strongest first: the faces of the CAD model, the shape of its triangles, many parts of the same shape, its name. */
export type Recognised = 'cad' | 'triangles' | 'repeated' | 'name';

export interface FastenerHead extends Place {
  readonly kind:
    | 'hexagon'
    | 'hexagonSocket'
    | 'slot'
    | 'crossRecess'
    | 'dome'
    | 'cylinder'
    | 'nut'
    | 'domedNut'
    | 'unknown';
  /** Across the flats of a hexagon or a socket. */
  readonly acrossFlats_mm?: number;
  readonly diameter_mm?: number;
  readonly from: Recognised;
}

export interface Thread extends Place {
  readonly diameter_mm: number;
  /** Absent where the thread is drawn as a plain cylinder. */
  readonly pitch_mm?: number;
  /** Length that stands free in the air. */
  readonly exposed_mm: number;
  readonly inside: boolean;
  readonly from: Recognised;
}

/** A narrowest place on the way of a hand or tool into the machine. */
export interface Opening extends Place {
  /** Diameter of the largest ball that passes. */
  readonly size_mm: number;
  /** Area of what is best reached through it. */
  readonly behind_cm2: number;
}

/** A patch of surface that a hand or tool does not get to. */
export interface Unreached extends Place {
  readonly area_cm2: number;
  /** Diameter of the largest ball that can get there from an access side, up to the size asked; 0 where nothing can. */
  readonly largest_mm: number;
  /** Why: the way is too narrow, or wide enough and too long. */
  readonly because: 'narrow' | 'far';
  /** Shortest way of the hand or tool to its farthest point, where there is one. */
  readonly way_mm?: number;
  /** Id of the opening that lets no larger ball through, where that is one. */
  readonly opening?: string;
}

export interface ReachMeasure {
  /** Diameter of the ball that stands for the hand or tool, how far it reaches, and how far beyond itself it touches. */
  readonly size_mm: number;
  readonly length_mm: number;
  readonly touch_mm: number;
  readonly resolution_mm: number;
  readonly reached_cm2: number;
  readonly unreached_cm2: number;
  readonly openings: readonly Opening[];
  readonly places: readonly Unreached[];
}

/** A patch that no nozzle sees. */
export interface JetShadow extends Place {
  readonly area_cm2: number;
  /** Something stands in the way, or it lies beside every cone, or it faces away from every nozzle within range. */
  readonly because: 'shaded' | 'aside' | 'turned';
  /** Parts that stand between this patch and the nozzles, most shading first; its own part where it faces away. */
  readonly shadedBy: readonly string[];
}

/** What one nozzle does. */
export interface JetNozzle {
  readonly id: string;
  readonly seen_cm2: number;
  /** The farthest point that it sees. */
  readonly farthest_mm: number;
  /** Mean angle at which its jet meets the surface: 0 head-on, 90 along it. */
  readonly incidence_deg: number;
}

/** How much of the filtered air that flows to a mouth comes straight from the filter. */
export interface SkyView extends Place {
  readonly mouth: string;
  /** 0 to 1: the part of the mouth's upstream rays that reaches a filter face uninterrupted. */
  readonly open: number;
  /** The part of them that runs past the filter faces, with nothing in the way. With `open` and the shares it makes 1. */
  readonly past: number;
  readonly distance_mm?: number;
  /** From the filter to the mouth at the velocity given. */
  readonly transit_s?: number;
  readonly interruptedBy: readonly { readonly part: string; readonly share: number }[];
}

/** A part from which something can fall straight into a mouth, or close beside it. */
export interface Overhang extends Place {
  readonly mouth: string;
  /** Ids of the parts that the mouth belongs to. */
  readonly mouthParts: readonly string[];
  /** Part of the mouth, seen from straight above, into which it can fall from this part first: 0 to 1. */
  readonly covers: number;
  /** The same for the ring around the mouth; see the setting `besideMouth_mm`. */
  readonly beside: number;
  /** Of its lowest point over the mouth, or over the ring where it does not cover the mouth. */
  readonly height_mm: number;
}

export interface Clearance extends Place {
  readonly kind: 'floor' | 'wall' | 'door';
  /** Floor: of the lowest point of an underside. Wall: of the nearest point. */
  readonly distance_mm?: number;
  /** Floor: how much of the floor it stands over. */
  readonly area_cm2?: number;
  /** Walls and doors: their id in the site. */
  readonly of?: string;
  /** Walls: parts that stand nearer than the limit, nearest first. */
  readonly nearer?: readonly { readonly part: string; readonly distance_mm: number }[];
  /** Doors: how far it opens before it strikes something, 0 to 180. */
  readonly opens_deg?: number;
  /** Doors: what it strikes: ids of parts, of walls of the site, or "floor". */
  readonly strikes?: readonly string[];
}

export interface SurveyMeasures {
  standingLiquid?: {
    readonly total_mL: number;
    readonly places: readonly Pool[];
    /** With `sealedBelow_mm` set: the total when seams and tunnels are left open. */
    readonly unsealed_mL?: number;
    /** Where tilts of the whole machine were asked for. */
    readonly tilts?: TiltRange;
  };
  flatFaces?: { readonly up_cm2: number; readonly down_cm2: number; readonly places: readonly FlatFace[] };
  insideCorners?: { readonly sharp_mm: number; readonly places: readonly InsideCorner[] };
  narrowGaps?: { readonly places: readonly NarrowGap[]; readonly joints: readonly Joint[] };
  hollows?: {
    readonly closed: readonly ClosedHollow[];
    readonly blind: readonly BlindChannel[];
    readonly deadLegs?: readonly DeadLeg[];
    readonly openMembers?: readonly OpenMember[];
  };
  fasteners?: { readonly heads: readonly FastenerHead[]; readonly threads: readonly Thread[] };
  handReach?: ReachMeasure;
  toolReach?: ReachMeasure;
  jetReach?: {
    readonly seen_cm2: number;
    readonly unseen_cm2: number;
    /** Open to the air, and farther from every nozzle than its range. */
    readonly beyond_cm2: number;
    readonly nozzles: readonly JetNozzle[];
    readonly places: readonly JetShadow[];
  };
  openSky?: { readonly places: readonly SkyView[] };
  /** `mouths`: how many were looked up from. */
  overhead?: { readonly mouths: number; readonly places: readonly Overhang[] };
  clearances?: { readonly floor_mm: number; readonly places: readonly Clearance[] };
}

export interface SurveySettings {
  /** Pitch of the liquid columns. */
  readonly pitch_mm: number;
  /** Pools shallower or smaller than this are not listed; the sum of what was left out is. */
  readonly leastPool_mL: number;
  readonly leastPoolDepth_mm: number;
  /**
   * Seams and tunnels narrower than this count as closed for standing liquid, and what that adds is told pool by pool. 0:
   * the model is taken as it is drawn.
   */
  readonly sealedBelow_mm: number;
  /** A face is flat when its slope to the horizontal is below this. */
  readonly flatBelow_deg: number;
  readonly leastFlat_cm2: number;
  /** An inside corner is listed when its radius is below this … */
  readonly cornerRadiusBelow_mm: number;
  /** … and its included angle through the air is below this. */
  readonly cornerAngleBelow_deg: number;
  readonly gapBelow_mm: number;
  /** Distance between the points at which gaps are looked for. */
  readonly gapSpacing_mm: number;
  /** Parts closer than this count as touching. */
  readonly contact_mm: number;
  readonly leastHollow_mL: number;
  /** Bores with one open end are listed from this depth on, as a multiple of the mouth's diameter. */
  readonly leastBlindRatio: number;
  /** A hand passes where a ball of this diameter does … */
  readonly hand_mm: number;
  /** … as far along its way as the arm is long … */
  readonly arm_mm: number;
  /** … and touches this far beyond the ball. */
  readonly finger_mm: number;
  /** The same of a tool: brush or lance. */
  readonly tool_mm: number;
  readonly toolLength_mm: number;
  readonly bristle_mm: number;
  /** Width of the cells in which ways are looked for; openings are measured to a tenth of it. */
  readonly reachSpacing_mm: number;
  /** Smaller patches that are not reached are counted, but not listed. */
  readonly leastUnreached_cm2: number;
  /** Longest edge of the triangles that are asked as a whole what nozzles see; smaller shadows may be missed. */
  readonly jetSpacing_mm: number;
  /** Unseen patches smaller than this are counted, and not listed. */
  readonly leastShadow_cm2: number;
  /** Width of the ring around a mouth from which what drips can drift in. */
  readonly besideMouth_mm: number;
  /** Undersides lower than this above the floor are listed … */
  readonly floorBelow_mm: number;
  /** … from this area on. */
  readonly leastUnderside_cm2: number;
  /** Parts nearer to a wall than this are listed. */
  readonly wallBelow_mm: number;
}

export interface SurveyResult {
  /** `surveyVersion` of the code that measured; absent in results of before it was told. */
  readonly version?: number;
  readonly settings: SurveySettings;
  /** What is wrong with the model itself; absent in surveys of before it was looked at. */
  readonly health?: ModelHealth;
  readonly notes: readonly string[];
  readonly measures: SurveyMeasures;
}

/** What the view and the pictures draw for a place. */
export interface Drawing {
  /** Free triangles, xyz per corner, mm: a pool's surface, the walls of a gap. */
  readonly triangles?: Float32Array;
  /** Polylines, each xyz per point, mm: an inside corner, a joint line. */
  readonly lines?: readonly Float32Array[];
}

export interface SurveyOutcome {
  readonly result: SurveyResult;
  /**
   * Per measure one number per triangle, parts in model order, triangles in shape order; NaN where the measure
   * says nothing. standingLiquid: depth of liquid over the triangle, mm. flatFaces: slope of a flat face, degrees,
   * negative facing down. insideCorners: radius, mm, on fillet faces under the limit. narrowGaps: width, mm.
   * hollows: 1 on the walls of closed hollows, 2 in blind channels, 3 in dead legs, 4 in open members.
   * fasteners: 1 on heads, 2 on threads. handReach, toolReach: way from the access side, mm, -1 where it does not
   * get to. jetReach: number of nozzles that see the triangle. openSky: share of open upstream rays, at mouths'
   * parts. overhead: height above the mouth, mm. clearances: distance to the floor, mm, below the limit.
   */
  readonly fields: Partial<Record<MeasureName, Float32Array>>;
  /** By place id. */
  readonly drawings: ReadonlyMap<string, Drawing>;
}

/** For long work: progress from 0 to 1, and a signal that stops it between steps. */
export interface Control {
  /** An AbortSignal of Node or of the browser. */
  readonly signal?: { readonly aborted: boolean };
  readonly onProgress?: (stage: string, done: number) => void;
  /** Called after each measure with all that is finished, for callers who must be able to keep it. */
  readonly onMeasure?: (soFar: SurveyOutcome) => void;
}
