using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class BenchVideo : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateTime>(
                name: "VideoFrom",
                table: "Reeds",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "VideoLink",
                table: "Reeds",
                type: "character varying(500)",
                maxLength: 500,
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "VideoFrom",
                table: "Reeds");

            migrationBuilder.DropColumn(
                name: "VideoLink",
                table: "Reeds");
        }
    }
}
