using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class SoundReadings : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "MeasuredFrom",
                table: "BenchLog",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "SoundReadings",
                columns: table => new
                {
                    Recording = table.Column<Guid>(type: "uuid", nullable: false),
                    State = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    Trouble = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    GuessedKind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    GuessHundredths = table.Column<int>(type: "integer", nullable: true),
                    SaidKind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Figures = table.Column<string>(type: "text", nullable: true),
                    Series = table.Column<byte[]>(type: "bytea", nullable: true),
                    Picture = table.Column<byte[]>(type: "bytea", maxLength: 61440, nullable: true),
                    AskedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    EndedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SoundReadings", x => x.Recording);
                    table.ForeignKey(
                        name: "FK_SoundReadings_Recordings_Recording",
                        column: x => x.Recording,
                        principalTable: "Recordings",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "SoundReadings");

            migrationBuilder.DropColumn(
                name: "MeasuredFrom",
                table: "BenchLog");
        }
    }
}
