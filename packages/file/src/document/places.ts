import type { Place, SurveyResult } from '@coveline/survey';

/** Every place that the survey lists, by id. */
export function placesById({ measures }: SurveyResult): ReadonlyMap<string, Place> {
  const lists: (readonly Place[] | undefined)[] = [
    measures.standingLiquid?.places,
    measures.flatFaces?.places,
    measures.insideCorners?.places,
    measures.narrowGaps?.places,
    measures.narrowGaps?.joints,
    measures.hollows?.closed,
    measures.hollows?.blind,
    measures.hollows?.deadLegs,
    measures.hollows?.openMembers,
    measures.fasteners?.heads,
    measures.fasteners?.threads,
    measures.handReach?.openings,
    measures.handReach?.places,
    measures.toolReach?.openings,
    measures.toolReach?.places,
    measures.jetReach?.places,
    measures.openSky?.places,
    measures.overhead?.places,
    measures.clearances?.places,
  ];
  return new Map(lists.flatMap((list) => (list ?? []).map((place) => [place.id, place] as const)));
}
