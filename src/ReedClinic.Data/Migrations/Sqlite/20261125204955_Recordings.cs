using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Recordings : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "FilesToRemove",
                columns: table => new
                {
                    File = table.Column<string>(type: "TEXT", maxLength: 32, nullable: false),
                    AskedAt = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FilesToRemove", x => x.File);
                });

            migrationBuilder.CreateTable(
                name: "Recordings",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Reed = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Type = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    File = table.Column<string>(type: "TEXT", maxLength: 32, nullable: false),
                    Bytes = table.Column<int>(type: "INTEGER", nullable: false),
                    Sha256 = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Milliseconds = table.Column<int>(type: "INTEGER", nullable: true),
                    Words = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true),
                    PassId = table.Column<Guid>(type: "TEXT", nullable: true),
                    AtSequence = table.Column<int>(type: "INTEGER", nullable: false),
                    InLetter = table.Column<bool>(type: "INTEGER", nullable: false),
                    RecordedBy = table.Column<Guid>(type: "TEXT", nullable: false),
                    FromStudio = table.Column<bool>(type: "INTEGER", nullable: false),
                    RecordedAt = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Recordings", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Recordings_Reeds_Reed",
                        column: x => x.Reed,
                        principalTable: "Reeds",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Uploads",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Reed = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    File = table.Column<string>(type: "TEXT", maxLength: 32, nullable: false),
                    Bytes = table.Column<int>(type: "INTEGER", nullable: false),
                    Received = table.Column<int>(type: "INTEGER", nullable: false),
                    Words = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true),
                    PassId = table.Column<Guid>(type: "TEXT", nullable: true),
                    AtSequence = table.Column<int>(type: "INTEGER", nullable: false),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    FromStudio = table.Column<bool>(type: "INTEGER", nullable: false),
                    StartedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Refusal = table.Column<string>(type: "TEXT", maxLength: 40, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Uploads", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Uploads_Reeds_Reed",
                        column: x => x.Reed,
                        principalTable: "Reeds",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Recordings_File",
                table: "Recordings",
                column: "File",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Recordings_Reed",
                table: "Recordings",
                column: "Reed");

            migrationBuilder.CreateIndex(
                name: "IX_Uploads_Reed",
                table: "Uploads",
                column: "Reed");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "FilesToRemove");

            migrationBuilder.DropTable(
                name: "Recordings");

            migrationBuilder.DropTable(
                name: "Uploads");
        }
    }
}
