using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class StudioEntries : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "StudioEntries",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Key = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Line = table.Column<string>(type: "TEXT", maxLength: 160, nullable: false),
                    Zone = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    SeenBy = table.Column<string>(type: "TEXT", maxLength: 60, nullable: true),
                    ShownIn = table.Column<string>(type: "TEXT", maxLength: 732, nullable: true),
                    ToTry = table.Column<string>(type: "TEXT", maxLength: 732, nullable: true),
                    Undo = table.Column<string>(type: "TEXT", maxLength: 40, nullable: true),
                    Caution = table.Column<string>(type: "TEXT", maxLength: 160, nullable: true),
                    Right = table.Column<string>(type: "TEXT", maxLength: 160, nullable: true),
                    Shows = table.Column<string>(type: "TEXT", maxLength: 60, nullable: true),
                    TellsOf = table.Column<string>(type: "TEXT", maxLength: 732, nullable: true),
                    MadeBy = table.Column<Guid>(type: "TEXT", nullable: false),
                    ChangedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    RetiredAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StudioEntries", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_StudioEntries_Key",
                table: "StudioEntries",
                column: "Key",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "StudioEntries");
        }
    }
}
