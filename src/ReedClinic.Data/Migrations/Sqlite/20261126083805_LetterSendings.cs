using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Sqlite
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
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "SentOrdinal",
                table: "Letters",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<string>(
                name: "WhatChanged",
                table: "Letters",
                type: "TEXT",
                maxLength: 500,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "LetterSendings",
                columns: table => new
                {
                    Batch = table.Column<Guid>(type: "TEXT", nullable: false),
                    Ordinal = table.Column<int>(type: "INTEGER", nullable: false),
                    VersionNumber = table.Column<int>(type: "INTEGER", nullable: false),
                    WhatChanged = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true),
                    Operation = table.Column<Guid>(type: "TEXT", nullable: false),
                    SentBy = table.Column<Guid>(type: "TEXT", nullable: false),
                    SentAt = table.Column<DateTime>(type: "TEXT", nullable: false)
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
                CREATE TRIGGER "LetterVersions_stay" BEFORE UPDATE ON "LetterVersions"
                BEGIN SELECT RAISE(ABORT, 'A version of a letter never changes.'); END;
                """);
            migrationBuilder.Sql(
                """
                CREATE TRIGGER "LetterSendings_stay" BEFORE UPDATE OF "Batch", "Ordinal", "VersionNumber", "WhatChanged", "Operation", "SentBy", "SentAt" ON "LetterSendings"
                BEGIN SELECT RAISE(ABORT, 'What was sent never changes.'); END;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""DROP TRIGGER "LetterVersions_stay";""");
            migrationBuilder.DropTable(
                name: "LetterSendings");

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
