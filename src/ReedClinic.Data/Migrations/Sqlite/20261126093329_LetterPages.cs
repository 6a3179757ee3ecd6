using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class LetterPages : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<byte[]>(
                name: "Page",
                table: "LetterSendings",
                type: "BLOB",
                nullable: true);

            // A page that is kept may go, and be made again; it is never changed.
            migrationBuilder.Sql(
                """
                CREATE TRIGGER "LetterPages_stay" BEFORE UPDATE OF "Page" ON "LetterSendings"
                WHEN OLD."Page" IS NOT NULL AND NEW."Page" IS NOT NULL
                BEGIN SELECT RAISE(ABORT, 'What was sent never changes.'); END;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""DROP TRIGGER "LetterPages_stay";""");
            migrationBuilder.DropColumn(
                name: "Page",
                table: "LetterSendings");
        }
    }
}
