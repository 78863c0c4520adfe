CREATE TABLE "job" (
	"id" text PRIMARY KEY NOT NULL,
	"kind" text NOT NULL,
	"machine" text NOT NULL,
	"revision" text NOT NULL,
	"state" text NOT NULL,
	"stage" text DEFAULT '' NOT NULL,
	"done" real DEFAULT 0 NOT NULL,
	"error" text,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"started_at" timestamp with time zone,
	"ended_at" timestamp with time zone
);
--> statement-breakpoint
CREATE TABLE "log_entry" (
	"machine" text NOT NULL,
	"seq" integer NOT NULL,
	"at" timestamp with time zone DEFAULT now() NOT NULL,
	"by" text NOT NULL,
	"kind" text NOT NULL,
	"what" text NOT NULL,
	"command" jsonb NOT NULL,
	"inverse" jsonb,
	"adds" jsonb,
	"target" integer,
	CONSTRAINT "log_entry_machine_seq_pk" PRIMARY KEY("machine","seq")
);
--> statement-breakpoint
CREATE TABLE "machine" (
	"id" text PRIMARY KEY NOT NULL,
	"initial" jsonb NOT NULL,
	"project" jsonb NOT NULL,
	"version" integer NOT NULL,
	"changed_at" timestamp with time zone DEFAULT now() NOT NULL
);
--> statement-breakpoint
CREATE TABLE "review" (
	"machine" text NOT NULL,
	"revision" text NOT NULL,
	"findings" jsonb NOT NULL,
	CONSTRAINT "review_machine_revision_pk" PRIMARY KEY("machine","revision")
);
--> statement-breakpoint
CREATE TABLE "revision" (
	"machine" text NOT NULL,
	"id" text NOT NULL,
	"sha256" text NOT NULL,
	"size_bytes" bigint NOT NULL,
	"notes" jsonb DEFAULT '[]'::jsonb NOT NULL,
	"parts" integer,
	"triangles" integer,
	"pdf" text,
	CONSTRAINT "revision_machine_id_pk" PRIMARY KEY("machine","id")
);
--> statement-breakpoint
CREATE TABLE "survey" (
	"machine" text NOT NULL,
	"revision" text NOT NULL,
	"up" text NOT NULL,
	"at" timestamp with time zone DEFAULT now() NOT NULL,
	"model" text NOT NULL,
	"result" text NOT NULL,
	"fields" text NOT NULL,
	"drawings" text NOT NULL,
	CONSTRAINT "survey_machine_revision_up_pk" PRIMARY KEY("machine","revision","up")
);
--> statement-breakpoint
ALTER TABLE "job" ADD CONSTRAINT "job_machine_machine_id_fk" FOREIGN KEY ("machine") REFERENCES "public"."machine"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "log_entry" ADD CONSTRAINT "log_entry_machine_machine_id_fk" FOREIGN KEY ("machine") REFERENCES "public"."machine"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "revision" ADD CONSTRAINT "revision_machine_machine_id_fk" FOREIGN KEY ("machine") REFERENCES "public"."machine"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "job_by_machine" ON "job" USING btree ("machine","created_at");