using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class NotePictures : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Picture",
                table: "TeachingNotes",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "PictureWords",
                table: "TeachingNotes",
                type: "TEXT",
                maxLength: 300,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "NotePictures",
                columns: table => new
                {
                    Key = table.Column<string>(type: "TEXT", maxLength: 12, nullable: false),
                    File = table.Column<string>(type: "TEXT", maxLength: 32, nullable: false),
                    Type = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Bytes = table.Column<int>(type: "INTEGER", nullable: false),
                    Sha256 = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    MadeBy = table.Column<Guid>(type: "TEXT", nullable: false),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_NotePictures", x => x.Key);
                });

            migrationBuilder.CreateTable(
                name: "LetterPictures",
                columns: table => new
                {
                    Batch = table.Column<Guid>(type: "TEXT", nullable: false),
                    Picture = table.Column<string>(type: "TEXT", maxLength: 12, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LetterPictures", x => new { x.Batch, x.Picture });
                    table.ForeignKey(
                        name: "FK_LetterPictures_Batches_Batch",
                        column: x => x.Batch,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_LetterPictures_NotePictures_Picture",
                        column: x => x.Picture,
                        principalTable: "NotePictures",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_TeachingNotes_Picture",
                table: "TeachingNotes",
                column: "Picture");

            migrationBuilder.CreateIndex(
                name: "IX_LetterPictures_Picture",
                table: "LetterPictures",
                column: "Picture");

            migrationBuilder.CreateIndex(
                name: "IX_NotePictures_File",
                table: "NotePictures",
                column: "File",
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "FK_TeachingNotes_NotePictures_Picture",
                table: "TeachingNotes",
                column: "Picture",
                principalTable: "NotePictures",
                principalColumn: "Key",
                onDelete: ReferentialAction.Restrict);

            // A picture never changes: a letter keeps the one that it was sent with.
            migrationBuilder.Sql(
                """
                CREATE TRIGGER "NotePictures_stay" BEFORE UPDATE ON "NotePictures"
                BEGIN SELECT RAISE(ABORT, 'A picture never changes.'); END;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""DROP TRIGGER "NotePictures_stay";""");
            migrationBuilder.DropForeignKey(
                name: "FK_TeachingNotes_NotePictures_Picture",
                table: "TeachingNotes");

            migrationBuilder.DropTable(
                name: "LetterPictures");

            migrationBuilder.DropTable(
                name: "NotePictures");

            migrationBuilder.DropIndex(
                name: "IX_TeachingNotes_Picture",
                table: "TeachingNotes");

            migrationBuilder.DropColumn(
                name: "Picture",
                table: "TeachingNotes");

            migrationBuilder.DropColumn(
                name: "PictureWords",
                table: "TeachingNotes");
        }
    }
}
