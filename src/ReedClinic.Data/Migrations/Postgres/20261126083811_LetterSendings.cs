using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class LetterSendings : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateTime>(
                name: "CorrectingSince",
                table: "Letters",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "SentOrdinal",
                table: "Letters",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<string>(
                name: "WhatChanged",
                table: "Letters",
                type: "character varying(500)",
                maxLength: 500,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "LetterSendings",
                columns: table => new
                {
                    Batch = table.Column<Guid>(type: "uuid", nullable: false),
                    Ordinal = table.Column<int>(type: "integer", nullable: false),
                    VersionNumber = table.Column<int>(type: "integer", nullable: false),
                    WhatChanged = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    Operation = table.Column<Guid>(type: "uuid", nullable: false),
                    SentBy = table.Column<Guid>(type: "uuid", nullable: false),
                    SentAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LetterSendings", x => new { x.Batch, x.Ordinal });
                    table.ForeignKey(
                        name: "FK_LetterSendings_LetterVersions_Batch_VersionNumber",
                        columns: x => new { x.Batch, x.VersionNumber },
                        principalTable: "LetterVersions",
                        principalColumns: new[] { "Batch", "Number" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_LetterSendings_Batch_VersionNumber",
                table: "LetterSendings",
                columns: new[] { "Batch", "VersionNumber" });

            migrationBuilder.CreateIndex(
                name: "IX_LetterSendings_Operation",
                table: "LetterSendings",
                column: "Operation",
                unique: true);

            // What was sent before there could be corrections is the first sending.
            migrationBuilder.Sql(
                """
                INSERT INTO "LetterSendings" ("Batch", "Ordinal", "VersionNumber", "WhatChanged", "Operation", "SentBy", "SentAt")
                SELECT "Batch", 1, "SentNumber", NULL, "SentWith", "SentBy", "SentAt" FROM "Letters" WHERE "SentNumber" IS NOT NULL;
                UPDATE "Letters" SET "SentOrdinal" = 1 WHERE "SentNumber" IS NOT NULL;
                """);

            // What was sent never changes; erasing a person deletes it.
            migrationBuilder.Sql(
                """
                CREATE FUNCTION "LetterStays"() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN RAISE EXCEPTION 'What was sent never changes.'; END $$;
                CREATE TRIGGER "LetterVersions_stay" BEFORE UPDATE ON "LetterVersions"
                FOR EACH ROW EXECUTE FUNCTION "LetterStays"();
                CREATE TRIGGER "LetterSendings_stay" BEFORE UPDATE OF "Batch", "Ordinal", "VersionNumber", "WhatChanged", "Operation", "SentBy", "SentAt" ON "LetterSendings"
                FOR EACH ROW EXECUTE FUNCTION "LetterStays"();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""DROP TRIGGER "LetterVersions_stay" ON "LetterVersions"; DROP TABLE "LetterSendings"; DROP FUNCTION "LetterStays"();""");

            migrationBuilder.DropColumn(
                name: "CorrectingSince",
                table: "Letters");

            migrationBuilder.DropColumn(
                name: "SentOrdinal",
                table: "Letters");

            migrationBuilder.DropColumn(
                name: "WhatChanged",
                table: "Letters");
        }
    }
}
