using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Sqlite
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
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "VideoLink",
                table: "Reeds",
                type: "TEXT",
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
