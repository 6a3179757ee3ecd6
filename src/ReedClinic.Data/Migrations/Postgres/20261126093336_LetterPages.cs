using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Postgres
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
                type: "bytea",
                nullable: true);

            // A page that is kept may go, and be made again; it is never changed.
            migrationBuilder.Sql(
                """
                CREATE TRIGGER "LetterPages_stay" BEFORE UPDATE OF "Page" ON "LetterSendings"
                FOR EACH ROW WHEN (OLD."Page" IS NOT NULL AND NEW."Page" IS NOT NULL) EXECUTE FUNCTION "LetterStays"();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""DROP TRIGGER "LetterPages_stay" ON "LetterSendings";""");
            migrationBuilder.DropColumn(
                name: "Page",
                table: "LetterSendings");
        }
    }
}
