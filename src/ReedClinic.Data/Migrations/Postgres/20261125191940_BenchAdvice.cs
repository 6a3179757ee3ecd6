using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class BenchAdvice : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "AdviceId",
                table: "BenchLog",
                type: "character varying(80)",
                maxLength: 80,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "LengthTenths",
                table: "BenchLog",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "PitchLean",
                table: "BenchLog",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "AdviceId",
                table: "BenchLog");

            migrationBuilder.DropColumn(
                name: "LengthTenths",
                table: "BenchLog");

            migrationBuilder.DropColumn(
                name: "PitchLean",
                table: "BenchLog");
        }
    }
}
