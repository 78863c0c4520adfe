/** Settings, cautions and sources. */
export const endTemplate = `
= Survey
The settings with which the model was measured. Places below them are not listed.
#rows(d.settings, first: 100mm)
== Site
What the survey took to stand around the machine and to happen in it, from geometry and names.
#if d.site.len() == 0 [Nothing.] else { rows(d.site, first: 60mm) }
== Notes
#if d.surveyNotes.len() == 0 [None.] else { bullets(d.surveyNotes) }

= Cautions
#bullets(d.cautions)

= Sources
Our wording stands in this file; the source itself decides.
#if d.sources.len() == 0 [None of the sources is in the catalogue.] else { table(columns: (1fr, 32mm, 27mm, 46mm),
  table.header[Source][Edition][Kind][What of it was seen],
  ..d.sources.map(s => (s.title, s.edition, s.kind, s.seen)).flatten()) }
`;
