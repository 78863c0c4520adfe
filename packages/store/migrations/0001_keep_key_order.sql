ALTER TABLE "log_entry" ALTER COLUMN "command" SET DATA TYPE json;--> statement-breakpoint
ALTER TABLE "log_entry" ALTER COLUMN "inverse" SET DATA TYPE json;--> statement-breakpoint
ALTER TABLE "log_entry" ALTER COLUMN "adds" SET DATA TYPE json;--> statement-breakpoint
ALTER TABLE "machine" ALTER COLUMN "initial" SET DATA TYPE json;--> statement-breakpoint
ALTER TABLE "machine" ALTER COLUMN "project" SET DATA TYPE json;--> statement-breakpoint
ALTER TABLE "review" ALTER COLUMN "findings" SET DATA TYPE json;--> statement-breakpoint
ALTER TABLE "revision" ALTER COLUMN "notes" SET DATA TYPE json;--> statement-breakpoint
ALTER TABLE "revision" ALTER COLUMN "notes" SET DEFAULT '[]'::json;