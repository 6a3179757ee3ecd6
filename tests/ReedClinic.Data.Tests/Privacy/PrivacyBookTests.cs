using System.Diagnostics;
using System.Text;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Guardians.GuardianScene;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>Copy and erasure: Regulation (EU) 2016/679, Articles 15, 17 and 20.</summary>
public sealed class PrivacyBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string Mark = "Zwkqvx";
    private const string MailMark = "zwkqvxmail";

    [Theory, OnBothEngines]
    public async Task A_copy_holds_every_row_of_the_person_and_nobody_elses(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new PersonScene(db);
        var (student, _) = await scene.FullAsync(Mark, MailMark);
        await scene.FullAsync("Qjhgyu", "qjhgyumail");

        var copy = Done(await scene.People.Book<PrivacyBook>().ExportAsync(student, null, Operation(), Ct));

        var counted = await PersonCounts.OfAsync(db, student.Student, student.Account);
        Assert.Equal(counted, copy.About.ToDictionary(area => area.Key, area => area.Value!.AsArray().Count));
        Assert.All(counted.Where(area => area.Key is not (nameof(Ticket) or nameof(Guardianship))), area => Assert.NotEqual(0, area.Value));
        var text = copy.About.ToJsonString(StoredTextForTests);
        string[] kept = ["Kestrel", "mail@harbour.example", "land", "question?", "thread 1", "bothers", "tier", "tried", "likes", "mark", "damage", "parcel", "note", "lesson", "strength", "habit", "answer", "browser", "key"];
        Assert.All(kept, words => Assert.Contains(words, text, StringComparison.Ordinal));
        Assert.DoesNotContain("qjhgyu", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain($"{Mark} staff note", text, StringComparison.Ordinal);
        Assert.Contains($"{Mark} guardian", copy.About["NamedGuardian"]!.ToJsonString(StoredTextForTests), StringComparison.Ordinal);
        Assert.DoesNotContain("reason", text, StringComparison.Ordinal);
        Assert.Equal([1, 2], copy.Letters.Select(letter => letter.Ordinal));
        Assert.Equal((copy.Letters[0].SentAt, copy.Letters[1].SentAt), (copy.Letters[1].Replaces!.Value, copy.Letters[0].ReplacedAt!.Value));
        Assert.Equal(2, copy.Reeds.Count);
    }

    [Theory, OnBothEngines]
    public async Task Copies_need_a_fresh_sign_in_and_are_taken_three_times_a_day_also_by_a_guardian(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new PersonScene(db);
        var (student, guardian) = await scene.FullAsync(Mark, MailMark);
        var privacy = scene.People.Book<PrivacyBook>();

        Assert.Equal(FreshSignIn.Field, Assert.Single(Refused(await privacy.ExportAsync(student with { IsFresh = false }, null, Operation(), Ct))).Field);
        for (var i = 0; i < PrivacyBook.MostCopiesADay; i++)
        {
            Done(await privacy.ExportAsync(guardian, student.Student, Operation(), Ct));
        }

        Assert.NotEmpty(Refused(await privacy.ExportAsync(guardian, student.Student, Operation(), Ct)));
        Done(await privacy.ExportAsync(student, null, Operation(), Ct)); // somebody else's count is their own
        Assert.IsType<Outcome<PersonCopy>.NotFound>(await privacy.ExportAsync(student, new StudentId(NewId()), Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_guardians_copy_holds_no_address_of_the_students_and_nobody_as_their_guardian(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new PersonScene(db);
        var (student, guardian) = await scene.FullAsync(Mark, MailMark);

        var copy = Done(await scene.People.Book<PrivacyBook>().ExportAsync(guardian, student.Student, Operation(), Ct));

        var text = copy.About.ToJsonString(StoredTextForTests);
        Assert.Contains($"{Mark} Kestrel", text, StringComparison.Ordinal);
        Assert.DoesNotContain(MailMark, text, StringComparison.OrdinalIgnoreCase);
        Assert.False(copy.About.ContainsKey("NamedGuardian"));
        Assert.Contains("@harbour.example", Done(await scene.People.Book<PrivacyBook>().ExportAsync(guardian, null, Operation(), Ct)).About.ToJsonString(StoredTextForTests), StringComparison.Ordinal);
    }

    [Theory, OnBothEngines]
    public async Task The_same_form_again_needs_a_fresh_sign_in_too_and_opens_nobody_elses_copy(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new PersonScene(db);
        var (student, guardian) = await scene.FullAsync(Mark, MailMark);
        var privacy = scene.People.Book<PrivacyBook>();
        var operation = Operation();
        Done(await privacy.ExportAsync(guardian, null, operation, Ct));

        Done(await privacy.ExportAsync(guardian, null, operation, Ct));
        await using (var context = db.CreateDbContext())
        {
            Assert.Equal(2, await context.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.Exported, Ct));
        }

        Assert.Equal(FreshSignIn.Field, Assert.Single(Refused(await privacy.ExportAsync(guardian with { IsFresh = false }, null, operation, Ct))).Field);
        Assert.NotEmpty(Refused(await privacy.ExportAsync(guardian, student.Student, operation, Ct)));
    }

    [Theory, OnBothEngines]
    public async Task After_erasing_nothing_of_the_person_is_left_anywhere_and_what_is_others_stays(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new PersonScene(db);
        var (student, guardian) = await scene.FullAsync(Mark, MailMark);
        await scene.FullAsync("Qjhgyu", "qjhgyumail");
        await SealAsync(db);
        var before = await OthersAsync(db, student, guardian);
        Assert.NotEqual(0, await HitsAsync(db, Mark));

        Done(await scene.People.Book<PrivacyBook>().EraseAsync(student, null, " Erase ", Operation(), Ct));
        Assert.Empty(await scene.People.Book<WardBook>().MineAsync(guardian, Ct));
        Done(await scene.People.Book<PrivacyBook>().EraseAsync(guardian, null, "erase", Operation(), Ct));
        await db.Services.GetRequiredService<RecordsCaretaker>().SweepAsync(Ct);

        Assert.Equal(0, await HitsAsync(db, Mark));
        Assert.Equal(0, await HitsAsync(db, Mark.ToLowerInvariant())); // the address, and names as they are searched
        Assert.Equal(before, await OthersAsync(db, student, guardian));
        Assert.Null((await db.Services.GetRequiredService<AuditChain>().VerifyAsync(Ct)).Broken);
        await using var context = db.CreateDbContext();
        var gone = new[] { student.Student!.Value.Value, student.Account.Value, guardian.Account.Value };
        Assert.Equal(3, await context.Set<ErasedPerson>().CountAsync(row => gone.Contains(row.Person), Ct));
        Assert.Equal(0, await context.Set<Pseudonym>().CountAsync(row => gone.Contains(row.Person), Ct));
        Assert.Equal(3, await context.Set<AuditEntry>().CountAsync(entry => entry.Event == AuditEvent.Erased, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Nobody_is_erased_unmeant_or_while_their_reeds_are_at_the_studio(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = (await scene.StudentAsync(age: AgeAnswer.OldEnough)) with { IsFresh = true };
        var batch = (await scene.Intake.BatchAsync(student)).Batch;
        var privacy = scene.Book<PrivacyBook>();

        Assert.Equal(FreshSignIn.Field, Assert.Single(Refused(await privacy.EraseAsync(student with { IsFresh = false }, null, "erase", Operation(), Ct))).Field);
        Assert.Equal(PrivacyBook.ConfirmationField, Assert.Single(Refused(await privacy.EraseAsync(student, null, "yes", Operation(), Ct))).Field);
        Done(await scene.Book<Data.Intake.ArrivalBook>().AddExtraAsync(Teacher, batch.Id, "one more", Operation(), Ct));
        Assert.NotEmpty(Refused(await privacy.EraseAsync(student, null, "erase", Operation(), Ct)));
        Assert.NotEmpty((await privacy.LookAsync(student, null, Ct))!.Hindrances);
        Done(await scene.Intake.Desk.MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, Operation(), Ct));
        Done(await privacy.EraseAsync(student, null, "erase", Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_last_owner_stays_and_a_teachers_work_outlives_them(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new PersonScene(db);
        var accounts = scene.People.Book<AccountBook>();
        var code = db.Services.GetRequiredService<FirstRunCode>().Text;
        var owner = Done(await scene.People.Book<StudioBook>().Open(code, "Quay Reeds", null, new NewAccount("Mara", NewEmail("mara"), GuardianScene.Password), Operation(), Ct));
        var mara = (await accounts.ActorFor(owner, Ct))! with { IsFresh = true };
        var taught = Done(await scene.People.Book<AccountRegister>().AdmitAsync(new NewAccount("Ilse Voss", NewEmail("ilse"), GuardianScene.Password), Role.Teacher, Operation(), Ct));
        var ilse = (await accounts.ActorFor(taught, Ct))! with { IsFresh = true };
        var student = await scene.People.StudentAsync(age: AgeAnswer.OldEnough);
        var batch = (await scene.People.Intake.BatchAsync(student)).Batch;
        Done(await scene.People.Book<Data.Bench.BenchBook>().RecordAsync(ilse, batch.Reeds[0].Id, Done(Domain.Bench.Note.Of("thin")), Operation(), Ct));

        Assert.NotEmpty(Refused(await scene.People.Book<PrivacyBook>().EraseAsync(mara, null, "erase", Operation(), Ct)));
        Done(await scene.People.Book<PrivacyBook>().EraseAsync(ilse, null, "erase", Operation(), Ct));

        var view = (await scene.People.Book<Data.Bench.BenchBook>().FindAsync(mara, batch.Reeds[0].Id, Ct))!;
        Assert.Single(view.Log.Facts);
        Assert.Equal("", view.NameOf(ilse.Account));
        await using var context = db.CreateDbContext();
        Assert.False(await context.Users.AnyAsync(user => user.Id == ilse.Account.Value, Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_audit_holds_no_names_and_no_words(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new PersonScene(db);
        await scene.FullAsync(Mark, MailMark);
        await SealAsync(db);

        await using var context = db.CreateDbContext();
        var entries = await context.Set<AuditEntry>().AsNoTracking().ToListAsync(Ct);
        Assert.True(entries.Count >= 5);
        Assert.DoesNotContain(Mark, string.Join('|', entries.Select(entry => System.Text.Json.JsonSerializer.Serialize(entry))), StringComparison.OrdinalIgnoreCase);
        var people = await context.Set<Student>().Select(student => (Guid?)student.Id.Value).ToListAsync(Ct);
        Assert.DoesNotContain(entries, entry => people.Contains(entry.Who) || people.Contains(entry.Whom));
    }

    private static System.Text.Json.JsonSerializerOptions StoredTextForTests => StoredText.Json;

    private static async Task SealAsync(TestDatabase db)
    {
        while (await db.Services.GetRequiredService<AuditChain>().SealAsync(Ct) > 0)
        {
            // Until all are on it.
        }
    }

    // How many rows each table has that don't belong to these two.
    private static async Task<string> OthersAsync(TestDatabase db, Actor student, Actor guardian)
    {
        var all = await PersonCounts.OfAsync(db, null, null);
        var mine = await PersonCounts.OfAsync(db, student.Student, student.Account);
        var theirs = await PersonCounts.OfAsync(db, new StudentId(Guid.Empty), guardian.Account);
        return string.Join("; ", all.OrderBy(area => area.Key, StringComparer.Ordinal)
            .Select(area => $"{area.Key} {area.Value - mine[area.Key] - (theirs.GetValueOrDefault(area.Key))}"));
    }

    // In the file and what lies beside it, or in a dump: wherever the words would stand if they were anywhere.
    private static async Task<int> HitsAsync(TestDatabase db, string marker)
    {
        if (db.Engine == ClinicEngine.Sqlite)
        {
            var file = new SqliteConnectionStringBuilder(db.Connection).DataSource;
            var hits = 0;
            foreach (var name in new[] { file, file + "-wal", file + "-shm" }.Where(File.Exists))
            {
                await using var stream = new FileStream(name, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
                using var bytes = new MemoryStream();
                await stream.CopyToAsync(bytes, Ct);
                hits += Count(Encoding.Latin1.GetString(bytes.ToArray()), marker);
            }

            return hits;
        }

        var to = new NpgsqlConnectionStringBuilder(db.Connection);
        using var dump = Process.Start(new ProcessStartInfo("pg_dump", ["--host", to.Host!, "--port", to.Port.ToString(System.Globalization.CultureInfo.InvariantCulture), "--username", to.Username!, to.Database!])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["PGPASSWORD"] = to.Password ?? "" },
        })!;
        var text = await dump.StandardOutput.ReadToEndAsync(Ct);
        await dump.WaitForExitAsync(Ct);
        Assert.True(dump.ExitCode == 0, await dump.StandardError.ReadToEndAsync(Ct));
        return Count(text, marker);
    }

    private static int Count(string text, string marker)
    {
        var count = 0;
        for (var at = text.IndexOf(marker, StringComparison.Ordinal); at >= 0; at = text.IndexOf(marker, at + 1, StringComparison.Ordinal))
        {
            count++;
        }

        return count;
    }
}
