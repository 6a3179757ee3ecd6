using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class CausesJudged : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateTime>(
                name: "CausesCountSince",
                table: "Studio",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Cause",
                table: "BenchLog",
                type: "TEXT",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "CauseAnswer",
                table: "BenchLog",
                type: "TEXT",
                maxLength: 40,
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "ReasoningLine",
                table: "AspNetUsers",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateIndex(
                name: "IX_BenchLog_CausesJudged",
                table: "BenchLog",
                column: "Cause",
                filter: "\"Kind\" = 'CauseJudged'");

            migrationBuilder.CreateIndex(
                name: "IX_BenchLog_NewestWork",
                table: "BenchLog",
                column: "RecordedAt",
                filter: "\"Kind\" = 'Adjustment'");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_BenchLog_CausesJudged",
                table: "BenchLog");

            migrationBuilder.DropIndex(
                name: "IX_BenchLog_NewestWork",
                table: "BenchLog");

            migrationBuilder.DropColumn(
                name: "CausesCountSince",
                table: "Studio");

            migrationBuilder.DropColumn(
                name: "Cause",
                table: "BenchLog");

            migrationBuilder.DropColumn(
                name: "CauseAnswer",
                table: "BenchLog");

            migrationBuilder.DropColumn(
                name: "ReasoningLine",
                table: "AspNetUsers");
        }
    }
}
