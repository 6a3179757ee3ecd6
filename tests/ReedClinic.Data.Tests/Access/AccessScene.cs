using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Data.Tests.Recordings;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.TeachingNotes;
using ReedClinic.Domain.Upkeep;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Access;

/// <summary>One student's batch at its end and one intake half done, with everybody who might reach for them.</summary>
internal sealed class AccessScene
{
    private const string OwnSecret = "a-secret-of-forty-three-characters-exactly1";

    private static readonly string SecretHash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(OwnSecret)));

    private readonly TestDatabase _db;
    private readonly Dictionary<Type, object?> _things = [];
    private readonly Queue<RecordingId> _memos = [];
    private RecordingId _upload;
    private RecordingId _sound;
    private string _picture = "";

    private AccessScene(TestDatabase db) => _db = db;

    /// <summary>Who asks, by the heading of the table's column.</summary>
    public Dictionary<string, Actor> Actors { get; } = [];

    public static async Task<AccessScene> OpenAsync(TestDatabase db)
    {
        var scene = new AccessScene(db);
        var intake = new IntakeScene(db);
        var studio = await scene.OwnerAsync();
        scene.Actors["stranger"] = new Actor(new AccountId(NewId()), null, false, false);
        scene.Actors["other"] = await intake.StudentAsync("Tove Lind");
        scene.Actors["own"] = await intake.StudentAsync("Ines Kestrel");
        scene.Actors["guardian"] = new Actor(new AccountId(NewId()), null, false, false) { Wards = [scene.Actors["own"].Student!.Value] };
        scene.Actors["elsewhere"] = new Actor(new AccountId(NewId()), null, false, false) { Wards = [scene.Actors["other"].Student!.Value] };
        scene.Actors["teacher"] = Teacher;
        scene.Actors["owner"] = studio;
        var batch = (await intake.BatchAsync(scene.Actors["own"])).Batch;
        var draft = await intake.DraftAsync(scene.Actors["own"], Form());
        var note = Done(await new BenchBook(db, TimeProvider.System).RecordAsync(Teacher, batch.Reeds[0].Id, Value(Note.Of("thin")), Operation(), Ct));
        Done(await new CommonThreadBook(db, TimeProvider.System).ChooseAsync(
            Teacher, batch.Code, new ThreadChoice(LessonWords: "Mind the corners."), Guid.Empty, Operation(), Ct));
        await scene.SendLetterAsync(batch);
        await scene.AnswersForAsync("guardian", "own");
        await scene.AnswersForAsync("elsewhere", "other");
        foreach (var worker in new[] { Teacher, studio })
        {
            Assert.True(await new BenchDraftBook(db, TimeProvider.System).KeepAsync(worker, batch.Reeds[0].Id, "half typed", Ct));
        }

        scene._things[typeof(StudentId)] = scene.Actors["own"].Student!.Value;
        scene._things[typeof(BatchId)] = batch.Id;
        scene._things[typeof(BatchCode)] = batch.Code;
        scene._things[typeof(ReedId)] = batch.Reeds[0].Id;
        scene._things[typeof(QuestionId)] = batch.Questions[0].Id;
        scene._things[typeof(DraftId)] = draft.Id;
        scene._things[typeof(EntryId)] = note.Tail;
        scene._things[typeof(AccountId)] = await scene.AdmittedAsync();
        await scene.AccountsAsync();
        scene._things[typeof(SessionId)] = await scene.SignedInAsync(scene.Actors["own"].Account);
        await scene.RecordAsync(batch.Reeds[0].Id);
        scene._things[typeof(TicketId)] = await scene.InvitedAsync(studio);
        await scene.TypeAsync();
        return scene;
    }

    /// <summary>Something to put into a parameter. Text is what things are found by: the batch's code, or the student's name.</summary>
    public object? For(Type type, Type? book = null) => type switch
    {
        _ when type == typeof(OperationId) => Operation(),
        _ when type == typeof(Guid) => NewId(),
        _ when type == typeof(string) && book == typeof(NotePictureBook) => _picture,
        _ when type == typeof(ReadOnlyMemory<byte>) => new ReadOnlyMemory<byte>(PictureFiles.Png()),
        _ when type == typeof(Stream) => new MemoryStream([1]),
        _ when type == typeof(RecordingId) => book == typeof(UploadBook) ? _upload : book == typeof(SoundReadingBook) ? _sound : _memos.Dequeue(),
        _ when type == typeof(int) => book == typeof(LetterLinkBook) ? LetterLink.UsualDays : 1,
        _ when type == typeof(bool) => true,
        _ when type == typeof(Stage) => Stage.Home,
        _ when type == typeof(Role) => Role.Student,
        _ when type == typeof(Admission) => new Admission(true, "16"),
        _ when type == typeof(CancellationToken) => Ct,
        _ when type == typeof((string?, DateTimeOffset?)) => ((string?)null, (DateTimeOffset?)null),
        _ when type == typeof(IReadOnlyList<StumblingWork>) => Array.Empty<StumblingWork>(),
        _ when type == typeof(IReadOnlyList<AdviceId>) => Array.Empty<AdviceId>(),
        _ when type == typeof(IReadOnlyList<EntryId>) => new[] { (EntryId)_things[typeof(EntryId)]! },
        _ when type == typeof(BenchEntry) => Value(Note.Of("said by whoever asks")),
        _ when type == typeof(NewAccount) => new NewAccount("Mara", $"mara{NewId():N}@harbour.example", "seven boats in the harbour") { Age = AgeAnswer.OldEnough },
        _ when type == typeof(string) && book == typeof(SignInBook) => OwnSecret,
        _ when type == typeof(string) && book == typeof(PasskeyBook) => "07",
        _ when type == typeof(string) && (book == typeof(InvitationBook) || book == typeof(BeginBook)) => $"nobody{NewId():N}@harbour.example",
        _ when type == typeof(string) => book == typeof(ArrivalBook) ? _things[typeof(BatchCode)]!.ToString() : "Ines",
        _ when Nullable.GetUnderlyingType(type) is { } inner => _things.GetValueOrDefault(inner),
        _ => _things.TryGetValue(type, out var thing) ? thing : throw new NotSupportedException($"The scene has no {type.Name}."),
    };

    /// <summary>Everything that is stored, in one short text: two that are equal say that nothing was changed.</summary>
    public async Task<string> StoredAsync()
    {
        await using var db = _db.CreateDbContext();
        var connection = db.Database.GetDbConnection();
        await connection.OpenAsync(Ct);
        var all = new StringBuilder();
        foreach (var table in db.Model.GetEntityTypes().Select(type => type.GetTableName()!).Distinct().Order(StringComparer.Ordinal))
        {
            await using var command = connection.CreateCommand();
            command.CommandText = $"SELECT * FROM \"{table}\"";
            await using var rows = await command.ExecuteReaderAsync(Ct);
            var lines = new List<string>();
            while (await rows.ReadAsync(Ct))
            {
                lines.Add(string.Join('|', Enumerable.Range(0, rows.FieldCount).Select(i => Convert.ToString(rows.GetValue(i), CultureInfo.InvariantCulture))));
            }

            // That a link was refused is noted, and changes nothing.
            var refused = table == "AuditNotes" ? nameof(AuditEvent.LinkRefused) : "|none|";
            all.Append(table).AppendJoin('\n', lines.Where(line => !line.Contains(refused, StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        }

        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(all.ToString())));
    }

    // What somebody would have typed.
    private async Task TypeAsync()
    {
        _things[typeof(UserPasskeyInfo)] = new UserPasskeyInfo([9], [1], TimeProvider.System.GetUtcNow(), 0, [], true, true, true, [], []);
        _things[typeof(AgeAnswer)] = AgeAnswer.OldEnough;
        _things[typeof(IReadOnlyList<BenchEntry>)] = new BenchEntry[] { Value(Note.Of("one breath")), Value(Note.Of("of two")) };
        _things[typeof(SeenParcel)] = new SeenParcel(new Dictionary<ReedId, ReedArrival>(), "wet");
        _things[typeof(IntakeForm)] = Form(2);
        _things[typeof(ThreadChoice)] = new ThreadChoice(LessonWords: "Mind the corners.");
        _things[typeof(StudentDetails)] = new StudentDetails(null, null, null, "Malta");
        _things[typeof(OwnNoteWords)] = new OwnNoteWords("Corners", "Mind {place}.", null, []);
        await CatalogueAsync();
        _things[typeof(PartWish)] = new PartWish.Afresh();
        _things[typeof(IReadOnlyDictionary<string, string>)] = new Dictionary<string, string>();
        await NoteAsync();
    }

    // A memo for every try, because some remove it, each in the letter; and one that is on its way.
    private async Task RecordAsync(ReedId reed)
    {
        var recordings = new RecordingScene(_db);
        _things[typeof(RecordingWish)] = new RecordingWish(reed, RecordingKind.ArrivalSound, 100);
        _upload = Done(await recordings.Uploads.StartAsync(Teacher, new RecordingWish(reed, RecordingKind.VoiceMemo, 100), Operation(), Ct)).Id;
        _sound = (await recordings.SendAsync(Teacher, reed, RecordingKind.ArrivalSound, SoundFiles.Wave())).Id;
        _things[typeof(SoundKind)] = SoundKind.Peep;
        Assert.True(await new SoundRegister(_db, recordings.Folder, TimeProvider.System).KeepAsync(_sound, MadeReadings.Crow(), Ct));
        for (var memo = 0; memo < 40; memo++)
        {
            var kept = await recordings.SendAsync(Teacher, reed, RecordingKind.VoiceMemo, SoundFiles.Mp3(4));
            _memos.Enqueue(kept.Id);
        }

        await using var db = _db.CreateDbContext();
        await db.Set<Recording>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.InLetter, true), Ct);
    }

    private async Task NoteAsync()
    {
        var words = (OwnNoteWords)For(typeof(OwnNoteWords))!;
        _things[typeof(OwnNoteId)] = Done(await new OwnNoteBook(_db, TimeProvider.System).BeginAsync(Teacher, words, Operation(), Ct)).Id;
    }

    private async Task CatalogueAsync()
    {
        var words = new StudioEntryWords(StudioEntryKind.Adjustment, "tap it dry", "It lets the water out.") { Zone = Zone.WholeReed, Undo = Reversible.Yes, Caution = "Gently." };
        _things[typeof(StudioEntryWords)] = words;
        _things[typeof(StudioEntryId)] = Done(await new CatalogueBook(_db, TimeProvider.System).AddAsync(Actors["owner"], words with { Name = "roll it dry" }, Operation(), Ct)).Id;
    }

    private static T Value<T>(Outcome<T> outcome) => Done(outcome);

    private async Task AnswersForAsync(string guardian, string student)
    {
        await using var db = _db.CreateDbContext();
        var now = TimeProvider.System.GetUtcNow();
        var answer = new Guardianship(new GuardianshipId(NewId()), Actors[student].Student!.Value, "Rosa", $"rosa{NewId():N}@harbour.example", now);
        answer.Give(Actors[guardian].Account, now);
        db.Add(answer);
        await db.SaveChangesAsync(Ct);
    }

    // Everybody has an account. The student's own has a passkey, a key for codes that was never tried, and a link to a new address.
    private async Task AccountsAsync()
    {
        await using var db = _db.CreateDbContext();
        foreach (var (who, actor) in Actors.Where(pair => pair.Key != "owner"))
        {
            db.Add(new ClinicAccount
            {
                Id = actor.Account.Value,
                UserName = who,
                NormalizedUserName = who,
                Email = $"{who}@harbour.example",
                NormalizedEmail = who,
                DisplayName = who,
            });
        }

        var own = Actors["own"].Account;
        await db.SaveChangesAsync(Ct);
        var seal = _db.Services.GetRequiredService<CodeSeal>();
        (await db.Users.SingleAsync(user => user.Id == own.Value, Ct)).CodeKey = seal.Close(new byte[20]);
        db.UserPasskeys.Add(new IdentityUserPasskey<Guid> { UserId = own.Value, CredentialId = [7], Data = new() { PublicKey = [1], AttestationObject = [], ClientDataJson = [] } });
        db.Add(new Ticket(new TicketId(NewId()), TicketPurpose.NewEmail, SecretHash, "new@harbour.example", TimeProvider.System.GetUtcNow(), TimeSpan.FromHours(1)) { Account = own });
        await db.SaveChangesAsync(Ct);
    }

    private async Task<SessionId> SignedInAsync(AccountId account)
    {
        await using var db = _db.CreateDbContext();
        var session = new Session(new SessionId(NewId()), account, SignInWay.Passkey, staff: false, "Firefox on Android", TimeProvider.System.GetUtcNow());
        db.Add(session);
        await db.SaveChangesAsync(Ct);
        return session.Id;
    }

    private async Task<AccountId> AdmittedAsync()
    {
        await using var scope = _db.Services.CreateAsyncScope();
        return Done(await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync((NewAccount)For(typeof(NewAccount))!, Role.Teacher, Operation(), Ct));
    }

    private async Task<TicketId> InvitedAsync(Actor owner)
    {
        await using var scope = _db.Services.CreateAsyncScope();
        return Done(await scope.ServiceProvider.GetRequiredService<InvitationBook>().InviteAsync(owner, Role.Student, $"kit{NewId():N}@harbour.example", byHand: false, Operation(), Ct)).Id;
    }

    private async Task<Actor> OwnerAsync()
    {
        await using var scope = _db.Services.CreateAsyncScope();
        var account = Done(await scope.ServiceProvider.GetRequiredService<StudioBook>().Open(
            _db.Services.GetRequiredService<FirstRunCode>().Text, "Quay Reeds", null, (NewAccount)For(typeof(NewAccount))!, Operation(), Ct));
        return new Actor(account, null, IsTeacher: false, IsOwner: true);
    }

    private async Task LinkAsync(BatchCode code) =>
        _things[typeof(LetterLinkId)] = Done(await new LetterLinkBook(_db, TimeProvider.System, _db.Services.GetRequiredService<MediaFolder>()).MakeAsync(Teacher, code, LetterLink.UsualDays, Operation(), Ct)).Id;

    private async Task SendLetterAsync(Batch batch)
    {
        var letters = new LetterBook(_db, TimeProvider.System, _db.Outbox);
        var view = (await letters.ReadAsync(Teacher, batch.Code, Ct))!;
        var pictures = new NotePictureBook(_db, _db.Services.GetRequiredService<MediaFolder>(), TimeProvider.System);
        _picture = Done(await pictures.KeepAsync(Teacher, PictureFiles.Png(), Operation(), Ct)).Key;
        var words = new Dictionary<string, string> { ["closing"] = new PictureMark(_picture, "A reed.").Written };
        view = Done(await letters.SaveAsync(Teacher, batch.Code, words, view.Version, Operation(), Ct));
        _things[typeof(LetterDraft)] = view.Draft;
        foreach (var gap in view.Gaps)
        {
            view = Done(await letters.WaiveAsync(Teacher, batch.Code, gap.Key, "next time", Operation(), Ct));
        }

        Done(await letters.SendAsync(Teacher, batch.Code, view.Mark, Operation(), Ct));
        await LinkAsync(batch.Code);
    }
}
