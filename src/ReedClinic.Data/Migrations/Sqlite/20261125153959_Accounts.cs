using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Accounts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "ConsentAge",
                table: "Studio",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "KeepYears",
                table: "Studio",
                type: "INTEGER",
                nullable: false,
                defaultValue: 5);

            migrationBuilder.AddColumn<string>(
                name: "PrivacyContact",
                table: "Studio",
                type: "TEXT",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "PrivacyWords",
                table: "Studio",
                type: "TEXT",
                maxLength: 8000,
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "SignUpOpen",
                table: "Studio",
                type: "INTEGER",
                nullable: false,
                defaultValue: true);

            migrationBuilder.AddColumn<string>(
                name: "Age",
                table: "Students",
                type: "TEXT",
                maxLength: 40,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Consent",
                table: "Students",
                type: "TEXT",
                maxLength: 40,
                nullable: false,
                defaultValue: "NotAsked");

            migrationBuilder.AddColumn<string>(
                name: "CodeKey",
                table: "AspNetUsers",
                type: "TEXT",
                maxLength: 500,
                nullable: true);

            migrationBuilder.AddColumn<DateTime>(
                name: "CodeSince",
                table: "AspNetUsers",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<DateTime>(
                name: "DisabledAt",
                table: "AspNetUsers",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "LastCodeStep",
                table: "AspNetUsers",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "AuditChain",
                columns: table => new
                {
                    Sequence = table.Column<long>(type: "INTEGER", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Event = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Who = table.Column<Guid>(type: "TEXT", nullable: true),
                    Whom = table.Column<Guid>(type: "TEXT", nullable: true),
                    What = table.Column<Guid>(type: "TEXT", nullable: true),
                    Before = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AuditChain", x => x.Sequence);
                });

            migrationBuilder.CreateTable(
                name: "AuditNotes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Event = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Who = table.Column<Guid>(type: "TEXT", nullable: true),
                    Whom = table.Column<Guid>(type: "TEXT", nullable: true),
                    What = table.Column<Guid>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AuditNotes", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ErasedPeople",
                columns: table => new
                {
                    Person = table.Column<Guid>(type: "TEXT", nullable: false),
                    ErasedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    BackupsGoneAt = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ErasedPeople", x => x.Person);
                });

            migrationBuilder.CreateTable(
                name: "Guardianships",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Student = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Email = table.Column<string>(type: "TEXT", maxLength: 254, nullable: false),
                    FoldedEmail = table.Column<string>(type: "TEXT", maxLength: 1016, nullable: false),
                    Account = table.Column<Guid>(type: "TEXT", nullable: true),
                    AskedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    GivenAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    WithdrawnAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Guardianships", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Jobs",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Payload = table.Column<string>(type: "TEXT", nullable: false),
                    About = table.Column<Guid>(type: "TEXT", nullable: true),
                    Once = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    DueAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Attempts = table.Column<int>(type: "INTEGER", nullable: false),
                    Lease = table.Column<Guid>(type: "TEXT", nullable: true),
                    LeasedUntil = table.Column<DateTime>(type: "TEXT", nullable: true),
                    DoneAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    GaveUpAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Problem = table.Column<string>(type: "TEXT", maxLength: 200, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Jobs", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Pseudonyms",
                columns: table => new
                {
                    Person = table.Column<Guid>(type: "TEXT", nullable: false),
                    Mask = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Pseudonyms", x => x.Person);
                });

            migrationBuilder.CreateTable(
                name: "RecoveryCodes",
                columns: table => new
                {
                    Hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Account = table.Column<Guid>(type: "TEXT", nullable: false),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    UsedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RecoveryCodes", x => x.Hash);
                });

            migrationBuilder.CreateTable(
                name: "Sessions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Account = table.Column<Guid>(type: "TEXT", nullable: false),
                    Way = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Device = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    StartedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    SeenAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    FreshAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Idle = table.Column<long>(type: "INTEGER", nullable: false),
                    EndsAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    EndedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Sessions", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "StaffNotes",
                columns: table => new
                {
                    Student = table.Column<Guid>(type: "TEXT", nullable: false),
                    Words = table.Column<string>(type: "TEXT", maxLength: 4000, nullable: false),
                    WrittenBy = table.Column<Guid>(type: "TEXT", nullable: false),
                    WrittenAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StaffNotes", x => x.Student);
                });

            migrationBuilder.CreateTable(
                name: "Tickets",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Purpose = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    SecretHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Email = table.Column<string>(type: "TEXT", maxLength: 254, nullable: false),
                    FoldedEmail = table.Column<string>(type: "TEXT", maxLength: 1016, nullable: false),
                    Account = table.Column<Guid>(type: "TEXT", nullable: true),
                    Student = table.Column<Guid>(type: "TEXT", nullable: true),
                    MadeBy = table.Column<Guid>(type: "TEXT", nullable: true),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    ExpiresAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    UsedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    WithdrawnAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    DeviceHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    Version = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Tickets", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Guardianships_Account",
                table: "Guardianships",
                column: "Account");

            migrationBuilder.CreateIndex(
                name: "IX_Guardianships_Student",
                table: "Guardianships",
                column: "Student",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Jobs_About",
                table: "Jobs",
                column: "About");

            migrationBuilder.CreateIndex(
                name: "IX_Jobs_DueAt",
                table: "Jobs",
                column: "DueAt");

            migrationBuilder.CreateIndex(
                name: "IX_Jobs_Once",
                table: "Jobs",
                column: "Once",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Pseudonyms_Mask",
                table: "Pseudonyms",
                column: "Mask",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_RecoveryCodes_Account",
                table: "RecoveryCodes",
                column: "Account");

            migrationBuilder.CreateIndex(
                name: "IX_Sessions_Account",
                table: "Sessions",
                column: "Account");

            migrationBuilder.CreateIndex(
                name: "IX_Sessions_EndsAt",
                table: "Sessions",
                column: "EndsAt");

            migrationBuilder.CreateIndex(
                name: "IX_Tickets_ExpiresAt",
                table: "Tickets",
                column: "ExpiresAt");

            migrationBuilder.CreateIndex(
                name: "IX_Tickets_FoldedEmail",
                table: "Tickets",
                column: "FoldedEmail");

            migrationBuilder.CreateIndex(
                name: "IX_Tickets_SecretHash",
                table: "Tickets",
                column: "SecretHash",
                unique: true);

            // The audit is only ever added to: the database itself refuses anything else.
            migrationBuilder.Sql("""
                CREATE TRIGGER "AuditChain_stays" BEFORE UPDATE ON "AuditChain"
                BEGIN SELECT RAISE(ABORT, 'The audit is never changed.'); END;
                """);
            migrationBuilder.Sql("""
                CREATE TRIGGER "AuditChain_keeps" BEFORE DELETE ON "AuditChain"
                BEGIN SELECT RAISE(ABORT, 'Nothing is removed from the audit.'); END;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AuditChain");

            migrationBuilder.DropTable(
                name: "AuditNotes");

            migrationBuilder.DropTable(
                name: "ErasedPeople");

            migrationBuilder.DropTable(
                name: "Guardianships");

            migrationBuilder.DropTable(
                name: "Jobs");

            migrationBuilder.DropTable(
                name: "Pseudonyms");

            migrationBuilder.DropTable(
                name: "RecoveryCodes");

            migrationBuilder.DropTable(
                name: "Sessions");

            migrationBuilder.DropTable(
                name: "StaffNotes");

            migrationBuilder.DropTable(
                name: "Tickets");

            migrationBuilder.DropColumn(
                name: "ConsentAge",
                table: "Studio");

            migrationBuilder.DropColumn(
                name: "KeepYears",
                table: "Studio");

            migrationBuilder.DropColumn(
                name: "PrivacyContact",
                table: "Studio");

            migrationBuilder.DropColumn(
                name: "PrivacyWords",
                table: "Studio");

            migrationBuilder.DropColumn(
                name: "SignUpOpen",
                table: "Studio");

            migrationBuilder.DropColumn(
                name: "Age",
                table: "Students");

            migrationBuilder.DropColumn(
                name: "Consent",
                table: "Students");

            migrationBuilder.DropColumn(
                name: "CodeKey",
                table: "AspNetUsers");

            migrationBuilder.DropColumn(
                name: "CodeSince",
                table: "AspNetUsers");

            migrationBuilder.DropColumn(
                name: "DisabledAt",
                table: "AspNetUsers");

            migrationBuilder.DropColumn(
                name: "LastCodeStep",
                table: "AspNetUsers");
        }
    }
}
