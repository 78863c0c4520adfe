/** Words that two packages below share without importing each other are held together here, at compile time. */
import type { AreaClass, CareLevelKey, MeasureKey } from '@coveline/catalogue';
import type { AreaClassName, CareLevel } from '@coveline/project';
import type { MeasureName } from '@coveline/survey';

type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never;

export const measuresAgree: Same<MeasureKey, MeasureName> = true;
export const careLevelsAgree: Same<CareLevelKey, CareLevel> = true;
export const areaClassesAgree: Same<AreaClass, AreaClassName> = true;
