using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

#pragma warning disable CA1814 // Prefer jagged arrays over multidimensional

namespace ReedClinic.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "AspNetRoles",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    NormalizedName = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    ConcurrencyStamp = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetRoles", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUsers",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    DisplayName = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    CreatedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    MadeBy = table.Column<Guid>(type: "uuid", nullable: true),
                    UserName = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    NormalizedUserName = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    Email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    NormalizedEmail = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    EmailConfirmed = table.Column<bool>(type: "boolean", nullable: false),
                    PasswordHash = table.Column<string>(type: "text", nullable: true),
                    SecurityStamp = table.Column<string>(type: "text", nullable: true),
                    ConcurrencyStamp = table.Column<string>(type: "text", nullable: true),
                    PhoneNumber = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    PhoneNumberConfirmed = table.Column<bool>(type: "boolean", nullable: false),
                    TwoFactorEnabled = table.Column<bool>(type: "boolean", nullable: false),
                    LockoutEnd = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    LockoutEnabled = table.Column<bool>(type: "boolean", nullable: false),
                    AccessFailedCount = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUsers", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DataProtectionKeys",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    FriendlyName = table.Column<string>(type: "text", nullable: true),
                    Xml = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DataProtectionKeys", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DoneOperations",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Verb = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    Subject = table.Column<Guid>(type: "uuid", nullable: false),
                    DoneAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DoneOperations", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Students",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    FoldedName = table.Column<string>(type: "character varying(320)", maxLength: 320, nullable: false),
                    Email = table.Column<string>(type: "character varying(254)", maxLength: 254, nullable: true),
                    FoldedEmail = table.Column<string>(type: "character varying(1016)", maxLength: 1016, nullable: true),
                    Account = table.Column<Guid>(type: "uuid", nullable: true),
                    Instrument = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    TunesTo = table.Column<double>(type: "double precision", nullable: true),
                    Scrape = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Country = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Students", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Studio",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    FirstOwner = table.Column<Guid>(type: "uuid", nullable: false),
                    OpenedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Studio", x => x.Id);
                    table.CheckConstraint("CK_Studio_Only", "\"Id\" = 1");
                });

            migrationBuilder.CreateTable(
                name: "AspNetRoleClaims",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    RoleId = table.Column<Guid>(type: "uuid", nullable: false),
                    ClaimType = table.Column<string>(type: "text", nullable: true),
                    ClaimValue = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetRoleClaims", x => x.Id);
                    table.ForeignKey(
                        name: "FK_AspNetRoleClaims_AspNetRoles_RoleId",
                        column: x => x.RoleId,
                        principalTable: "AspNetRoles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserClaims",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    UserId = table.Column<Guid>(type: "uuid", nullable: false),
                    ClaimType = table.Column<string>(type: "text", nullable: true),
                    ClaimValue = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserClaims", x => x.Id);
                    table.ForeignKey(
                        name: "FK_AspNetUserClaims_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserLogins",
                columns: table => new
                {
                    LoginProvider = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    ProviderKey = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    ProviderDisplayName = table.Column<string>(type: "text", nullable: true),
                    UserId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserLogins", x => new { x.LoginProvider, x.ProviderKey });
                    table.ForeignKey(
                        name: "FK_AspNetUserLogins_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserPasskeys",
                columns: table => new
                {
                    CredentialId = table.Column<byte[]>(type: "bytea", maxLength: 1024, nullable: false),
                    UserId = table.Column<Guid>(type: "uuid", nullable: false),
                    Data = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserPasskeys", x => x.CredentialId);
                    table.ForeignKey(
                        name: "FK_AspNetUserPasskeys_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserRoles",
                columns: table => new
                {
                    UserId = table.Column<Guid>(type: "uuid", nullable: false),
                    RoleId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserRoles", x => new { x.UserId, x.RoleId });
                    table.ForeignKey(
                        name: "FK_AspNetUserRoles_AspNetRoles_RoleId",
                        column: x => x.RoleId,
                        principalTable: "AspNetRoles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_AspNetUserRoles_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserTokens",
                columns: table => new
                {
                    UserId = table.Column<Guid>(type: "uuid", nullable: false),
                    LoginProvider = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    Name = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    Value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserTokens", x => new { x.UserId, x.LoginProvider, x.Name });
                    table.ForeignKey(
                        name: "FK_AspNetUserTokens_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Batches",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Code = table.Column<string>(type: "character varying(7)", maxLength: 7, nullable: false),
                    Student = table.Column<Guid>(type: "uuid", nullable: false),
                    SubmittedBy = table.Column<Guid>(type: "uuid", nullable: false),
                    Stage = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    Instrument = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    TunesTo = table.Column<double>(type: "double precision", nullable: true),
                    Scrape = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    SubmittedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    ArrivedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    BenchStartedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    LetterSentAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    PostedBackAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    HomeAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    ArrivalNote = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Batches", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Batches_Students_Student",
                        column: x => x.Student,
                        principalTable: "Students",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "IntakeDrafts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Student = table.Column<Guid>(type: "uuid", nullable: false),
                    StartedBy = table.Column<Guid>(type: "uuid", nullable: false),
                    Payload = table.Column<string>(type: "character varying(120000)", maxLength: 120000, nullable: false),
                    StartedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    SavedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    BecameBatch = table.Column<Guid>(type: "uuid", nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_IntakeDrafts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_IntakeDrafts_Students_Student",
                        column: x => x.Student,
                        principalTable: "Students",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "CommonThreads",
                columns: table => new
                {
                    BatchId = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<Guid>(type: "uuid", nullable: false),
                    LessonKind = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    LessonWords = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    StrengthKind = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    StrengthWords = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    HabitWords = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    ChosenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    ChosenBy = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CommonThreads", x => x.BatchId);
                    table.ForeignKey(
                        name: "FK_CommonThreads_Batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Letters",
                columns: table => new
                {
                    Batch = table.Column<Guid>(type: "uuid", nullable: false),
                    LastNumber = table.Column<int>(type: "integer", nullable: false),
                    SentNumber = table.Column<int>(type: "integer", nullable: true),
                    SentAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    SentBy = table.Column<Guid>(type: "uuid", nullable: true),
                    SentWith = table.Column<Guid>(type: "uuid", nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Letters", x => x.Batch);
                    table.ForeignKey(
                        name: "FK_Letters_Batches_Batch",
                        column: x => x.Batch,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Questions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Batch = table.Column<Guid>(type: "uuid", nullable: false),
                    Reed = table.Column<Guid>(type: "uuid", nullable: true),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Text = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: false),
                    Answer = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    AnsweredAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Questions", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Questions_Batches_Batch",
                        column: x => x.Batch,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Reeds",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Batch = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    HowToRecognise = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Bothers = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: false),
                    Permission = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    TiedBy = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    MadeHow = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    MinutesPlayed = table.Column<int>(type: "integer", nullable: true),
                    LastTried = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    UsedFor = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Likes = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    Presence = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    UpperMark = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    Winding = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    Overlap = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    OverlapAgrees = table.Column<bool>(type: "boolean", nullable: true),
                    Damage = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    Fitness = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Scales_Effort = table.Column<int>(type: "integer", nullable: true),
                    Scales_HighNotes = table.Column<int>(type: "integer", nullable: true),
                    Scales_Intonation = table.Column<int>(type: "integer", nullable: true),
                    Scales_Opening = table.Column<int>(type: "integer", nullable: true),
                    Scales_Response = table.Column<int>(type: "integer", nullable: true),
                    Scales_SoftPlaying = table.Column<int>(type: "integer", nullable: true),
                    Scales_Sound = table.Column<int>(type: "integer", nullable: true),
                    Scales_Tiredness = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Reeds", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Reeds_Batches_Batch",
                        column: x => x.Batch,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "LetterVersions",
                columns: table => new
                {
                    Batch = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Payload = table.Column<string>(type: "text", nullable: false),
                    Operation = table.Column<Guid>(type: "uuid", nullable: false),
                    SavedBy = table.Column<Guid>(type: "uuid", nullable: false),
                    SavedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LetterVersions", x => new { x.Batch, x.Number });
                    table.ForeignKey(
                        name: "FK_LetterVersions_Letters_Batch",
                        column: x => x.Batch,
                        principalTable: "Letters",
                        principalColumn: "Batch",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "LetterWaivers",
                columns: table => new
                {
                    Batch = table.Column<Guid>(type: "uuid", nullable: false),
                    Gap = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Reason = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: false),
                    WaivedBy = table.Column<Guid>(type: "uuid", nullable: false),
                    WaivedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LetterWaivers", x => new { x.Batch, x.Gap });
                    table.ForeignKey(
                        name: "FK_LetterWaivers_Letters_Batch",
                        column: x => x.Batch,
                        principalTable: "Letters",
                        principalColumn: "Batch",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "BenchDrafts",
                columns: table => new
                {
                    ReedId = table.Column<Guid>(type: "uuid", nullable: false),
                    Account = table.Column<Guid>(type: "uuid", nullable: false),
                    Typed = table.Column<string>(type: "character varying(16000)", maxLength: 16000, nullable: false),
                    KeptAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BenchDrafts", x => new { x.ReedId, x.Account });
                    table.ForeignKey(
                        name: "FK_BenchDrafts_Reeds_ReedId",
                        column: x => x.ReedId,
                        principalTable: "Reeds",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "BenchLog",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    ReedId = table.Column<Guid>(type: "uuid", nullable: false),
                    Sequence = table.Column<int>(type: "integer", nullable: false),
                    OperationId = table.Column<Guid>(type: "uuid", nullable: false),
                    Supersedes = table.Column<Guid>(type: "uuid", nullable: true),
                    PassId = table.Column<Guid>(type: "uuid", nullable: true),
                    RecordedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    RecordedBy = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    AdjustmentKind = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    Zone = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Blades = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Sides = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    AmountStrokes = table.Column<int>(type: "integer", nullable: true),
                    AmountMicrometres = table.Column<int>(type: "integer", nullable: true),
                    AmountWords = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    FindingId = table.Column<Guid>(type: "uuid", nullable: true),
                    ForTheSakeOf = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Words = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    FindingKind = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    Character = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Shape = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Relation = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    OtherZone = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    OtherBlades = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    OtherSides = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    KnownBy = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    Certainty = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Arose = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Ending = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    RiskId = table.Column<Guid>(type: "uuid", nullable: true),
                    RiskOutcome = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    TestKind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Step = table.Column<int>(type: "integer", nullable: true),
                    PitchText = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    PitchClass = table.Column<int>(type: "integer", nullable: true),
                    PitchCents = table.Column<double>(type: "double precision", nullable: true),
                    PitchOctave = table.Column<int>(type: "integer", nullable: true),
                    PitchBetween = table.Column<int>(type: "integer", nullable: true),
                    PitchA4 = table.Column<double>(type: "double precision", nullable: true),
                    VerdictKind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BenchLog", x => x.Id);
                    table.ForeignKey(
                        name: "FK_BenchLog_Reeds_ReedId",
                        column: x => x.ReedId,
                        principalTable: "Reeds",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "FindingSheet",
                columns: table => new
                {
                    ReedId = table.Column<Guid>(type: "uuid", nullable: false),
                    FindingKind = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Found = table.Column<bool>(type: "boolean", nullable: false),
                    Character = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    CausedByWork = table.Column<bool>(type: "boolean", nullable: false),
                    Suspected = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FindingSheet", x => new { x.ReedId, x.FindingKind });
                    table.ForeignKey(
                        name: "FK_FindingSheet_Reeds_ReedId",
                        column: x => x.ReedId,
                        principalTable: "Reeds",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.InsertData(
                table: "AspNetRoles",
                columns: new[] { "Id", "ConcurrencyStamp", "Name", "NormalizedName" },
                values: new object[,]
                {
                    { new Guid("019ab000-0000-7000-8000-000000000001"), "019ab000-0000-7000-8000-000000000001", "Student", "STUDENT" },
                    { new Guid("019ab000-0000-7000-8000-000000000002"), "019ab000-0000-7000-8000-000000000002", "Teacher", "TEACHER" },
                    { new Guid("019ab000-0000-7000-8000-000000000003"), "019ab000-0000-7000-8000-000000000003", "Owner", "OWNER" }
                });

            migrationBuilder.CreateIndex(
                name: "IX_AspNetRoleClaims_RoleId",
                table: "AspNetRoleClaims",
                column: "RoleId");

            migrationBuilder.CreateIndex(
                name: "RoleNameIndex",
                table: "AspNetRoles",
                column: "NormalizedName",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUserClaims_UserId",
                table: "AspNetUserClaims",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUserLogins_UserId",
                table: "AspNetUserLogins",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUserPasskeys_UserId",
                table: "AspNetUserPasskeys",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUserRoles_RoleId",
                table: "AspNetUserRoles",
                column: "RoleId");

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                table: "AspNetUsers",
                column: "NormalizedEmail");

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUsers_MadeBy",
                table: "AspNetUsers",
                column: "MadeBy",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                table: "AspNetUsers",
                column: "NormalizedUserName",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Batches_Code",
                table: "Batches",
                column: "Code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Batches_Student_SubmittedAt",
                table: "Batches",
                columns: new[] { "Student", "SubmittedAt" });

            migrationBuilder.CreateIndex(
                name: "IX_Batches_SubmittedBy",
                table: "Batches",
                column: "SubmittedBy",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_BenchLog_OperationId",
                table: "BenchLog",
                column: "OperationId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_BenchLog_ReedId_Sequence",
                table: "BenchLog",
                columns: new[] { "ReedId", "Sequence" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_BenchLog_Supersedes",
                table: "BenchLog",
                column: "Supersedes",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_DoneOperations_Subject",
                table: "DoneOperations",
                column: "Subject");

            migrationBuilder.CreateIndex(
                name: "IX_IntakeDrafts_StartedBy",
                table: "IntakeDrafts",
                column: "StartedBy",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_IntakeDrafts_Student",
                table: "IntakeDrafts",
                column: "Student");

            migrationBuilder.CreateIndex(
                name: "IX_LetterVersions_Operation",
                table: "LetterVersions",
                column: "Operation",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Questions_Batch",
                table: "Questions",
                column: "Batch");

            migrationBuilder.CreateIndex(
                name: "IX_Reeds_Batch_Number",
                table: "Reeds",
                columns: new[] { "Batch", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Students_Account",
                table: "Students",
                column: "Account",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Students_FoldedEmail",
                table: "Students",
                column: "FoldedEmail");

            migrationBuilder.CreateIndex(
                name: "IX_Students_FoldedName",
                table: "Students",
                column: "FoldedName");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AspNetRoleClaims");

            migrationBuilder.DropTable(
                name: "AspNetUserClaims");

            migrationBuilder.DropTable(
                name: "AspNetUserLogins");

            migrationBuilder.DropTable(
                name: "AspNetUserPasskeys");

            migrationBuilder.DropTable(
                name: "AspNetUserRoles");

            migrationBuilder.DropTable(
                name: "AspNetUserTokens");

            migrationBuilder.DropTable(
                name: "BenchDrafts");

            migrationBuilder.DropTable(
                name: "BenchLog");

            migrationBuilder.DropTable(
                name: "CommonThreads");

            migrationBuilder.DropTable(
                name: "DataProtectionKeys");

            migrationBuilder.DropTable(
                name: "DoneOperations");

            migrationBuilder.DropTable(
                name: "FindingSheet");

            migrationBuilder.DropTable(
                name: "IntakeDrafts");

            migrationBuilder.DropTable(
                name: "LetterVersions");

            migrationBuilder.DropTable(
                name: "LetterWaivers");

            migrationBuilder.DropTable(
                name: "Questions");

            migrationBuilder.DropTable(
                name: "Studio");

            migrationBuilder.DropTable(
                name: "AspNetRoles");

            migrationBuilder.DropTable(
                name: "AspNetUsers");

            migrationBuilder.DropTable(
                name: "Reeds");

            migrationBuilder.DropTable(
                name: "Letters");

            migrationBuilder.DropTable(
                name: "Batches");

            migrationBuilder.DropTable(
                name: "Students");
        }
    }
}
