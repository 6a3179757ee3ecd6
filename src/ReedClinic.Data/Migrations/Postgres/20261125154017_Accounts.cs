using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace ReedClinic.Data.Migrations.Postgres
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
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "KeepYears",
                table: "Studio",
                type: "integer",
                nullable: false,
                defaultValue: 5);

            migrationBuilder.AddColumn<string>(
                name: "PrivacyContact",
                table: "Studio",
                type: "character varying(200)",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "PrivacyWords",
                table: "Studio",
                type: "character varying(8000)",
                maxLength: 8000,
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "SignUpOpen",
                table: "Studio",
                type: "boolean",
                nullable: false,
                defaultValue: true);

            migrationBuilder.AddColumn<string>(
                name: "Age",
                table: "Students",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Consent",
                table: "Students",
                type: "character varying(40)",
                maxLength: 40,
                nullable: false,
                defaultValue: "NotAsked");

            migrationBuilder.AddColumn<string>(
                name: "CodeKey",
                table: "AspNetUsers",
                type: "character varying(500)",
                maxLength: 500,
                nullable: true);

            migrationBuilder.AddColumn<DateTime>(
                name: "CodeSince",
                table: "AspNetUsers",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<DateTime>(
                name: "DisabledAt",
                table: "AspNetUsers",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "LastCodeStep",
                table: "AspNetUsers",
                type: "bigint",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "AuditChain",
                columns: table => new
                {
                    Sequence = table.Column<long>(type: "bigint", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Event = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    Who = table.Column<Guid>(type: "uuid", nullable: true),
                    Whom = table.Column<Guid>(type: "uuid", nullable: true),
                    What = table.Column<Guid>(type: "uuid", nullable: true),
                    Before = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    Hash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AuditChain", x => x.Sequence);
                });

            migrationBuilder.CreateTable(
                name: "AuditNotes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Event = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    Who = table.Column<Guid>(type: "uuid", nullable: true),
                    Whom = table.Column<Guid>(type: "uuid", nullable: true),
                    What = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AuditNotes", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ErasedPeople",
                columns: table => new
                {
                    Person = table.Column<Guid>(type: "uuid", nullable: false),
                    ErasedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    BackupsGoneAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ErasedPeople", x => x.Person);
                });

            migrationBuilder.CreateTable(
                name: "Guardianships",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Student = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Email = table.Column<string>(type: "character varying(254)", maxLength: 254, nullable: false),
                    FoldedEmail = table.Column<string>(type: "character varying(1016)", maxLength: 1016, nullable: false),
                    Account = table.Column<Guid>(type: "uuid", nullable: true),
                    AskedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    GivenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    WithdrawnAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Guardianships", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Jobs",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    Payload = table.Column<string>(type: "text", nullable: false),
                    About = table.Column<Guid>(type: "uuid", nullable: true),
                    Once = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: true),
                    MadeAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    DueAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Attempts = table.Column<int>(type: "integer", nullable: false),
                    Lease = table.Column<Guid>(type: "uuid", nullable: true),
                    LeasedUntil = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    DoneAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    GaveUpAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Problem = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Jobs", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Pseudonyms",
                columns: table => new
                {
                    Person = table.Column<Guid>(type: "uuid", nullable: false),
                    Mask = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Pseudonyms", x => x.Person);
                });

            migrationBuilder.CreateTable(
                name: "RecoveryCodes",
                columns: table => new
                {
                    Hash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    Account = table.Column<Guid>(type: "uuid", nullable: false),
                    MadeAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    UsedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RecoveryCodes", x => x.Hash);
                });

            migrationBuilder.CreateTable(
                name: "Sessions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Account = table.Column<Guid>(type: "uuid", nullable: false),
                    Way = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    Device = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    StartedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    SeenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    FreshAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Idle = table.Column<long>(type: "bigint", nullable: false),
                    EndsAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    EndedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Sessions", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "StaffNotes",
                columns: table => new
                {
                    Student = table.Column<Guid>(type: "uuid", nullable: false),
                    Words = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: false),
                    WrittenBy = table.Column<Guid>(type: "uuid", nullable: false),
                    WrittenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StaffNotes", x => x.Student);
                });

            migrationBuilder.CreateTable(
                name: "Tickets",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Purpose = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    SecretHash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    Email = table.Column<string>(type: "character varying(254)", maxLength: 254, nullable: false),
                    FoldedEmail = table.Column<string>(type: "character varying(1016)", maxLength: 1016, nullable: false),
                    Account = table.Column<Guid>(type: "uuid", nullable: true),
                    Student = table.Column<Guid>(type: "uuid", nullable: true),
                    MadeBy = table.Column<Guid>(type: "uuid", nullable: true),
                    MadeAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    ExpiresAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    UsedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    WithdrawnAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    DeviceHash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
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
                CREATE FUNCTION audit_chain_stays() RETURNS trigger LANGUAGE plpgsql AS
                $$ BEGIN RAISE EXCEPTION 'The audit is only ever added to.'; END $$;
                """);
            migrationBuilder.Sql("""
                CREATE TRIGGER "AuditChain_stays" BEFORE UPDATE OR DELETE OR TRUNCATE ON "AuditChain"
                FOR EACH STATEMENT EXECUTE FUNCTION audit_chain_stays();
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

            migrationBuilder.Sql("DROP FUNCTION IF EXISTS audit_chain_stays();");
        }
    }
}
