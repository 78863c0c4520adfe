-- Projects of before have no calculations. Added at the end of the text, so that all other keys keep their order.
UPDATE "machine" SET "project" = (left(rtrim("project"::text), -1) || ',"calculations":[]}')::json
WHERE "project" -> 'calculations' IS NULL;--> statement-breakpoint
UPDATE "machine" SET "initial" = (left(rtrim("initial"::text), -1) || ',"calculations":[]}')::json
WHERE "initial" -> 'calculations' IS NULL;
