/**
 * Raise it whenever a survey that is stored could be misread, or would now come out differently: results of another
 * version are not used, and the model is measured again.
 */
export const surveyVersion = 2;
