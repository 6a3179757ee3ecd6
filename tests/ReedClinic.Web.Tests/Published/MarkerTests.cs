using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.KillDriver;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Published;

/// <summary>
/// People do the whole job over HTTP, and everything they type or hold has a mark: first while all goes well, then while the
/// database refuses every write. Nothing that is marked stands in the log (OWASP ASVS 5.0, 16.2.5), and every line is a
/// value of its own (16.4.1).
/// </summary>
public sealed partial class MarkerTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string Forced = "forced_by_a_test";
    private static readonly string[] Refusing = ["BenchEntry", "ClinicAccount", "IntakeDraft", "Letter"];

    private readonly Dictionary<string, string> _marked = [];
    private readonly List<string> _references = [];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task Nothing_that_people_type_or_hold_stands_in_the_log(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using var app = await StartAsync(db);
        using var owner = Visitor(app);
        using var student = Visitor(app);
        await OpenStudioAsync(owner, app);
        await ShowACodeAsync(owner);
        await JoinAsync(student, db);
        var draft = await AnnounceAsync(student, db);
        var (bench, letter) = await TakeInAsync(db);
        await WorkAsync(owner, bench, letter, HttpStatusCode.SeeOther, HttpStatusCode.Found);
        using var stranger = Visitor(app);
        await KnockAsync(stranger);

        var country = await Form.At(student, $"{draft}/country");
        var join = await Form.At(stranger, await InviteAsync(db, "an address in trouble"));
        await RefuseWritesAsync(db);
        await WorkAsync(owner, bench, letter, HttpStatusCode.InternalServerError, HttpStatusCode.InternalServerError);
        await TroubleAsync(stranger, country, join, db);
        await app.KillAsync();

        Heard(app.Logged);
    }

    // Something is heard, from the first line to the last failure; each line is one value; and no mark is in any of them.
    private void Heard(IReadOnlyList<string> log)
    {
        Assert.Contains(log, line => line.Contains("Application started.", StringComparison.Ordinal));
        Assert.InRange(_references.Count, 6, int.MaxValue);
        Assert.All(_references, reference => Assert.Contains(log, line =>
            line.Contains("\"@l\":\"Error\"", StringComparison.Ordinal) && line.Contains($"\"@tr\":\"{reference}\"", StringComparison.Ordinal)));
        Assert.Contains(log, line => line.Contains(Forced, StringComparison.Ordinal));
        Assert.All(log, line =>
        {
            using var read = JsonDocument.Parse(line);
            Assert.Equal(JsonValueKind.Object, read.RootElement.ValueKind);
        });
        Assert.InRange(_marked.Count, 25, int.MaxValue);
        var told = _marked.Where(mark => log.Any(line => line.Contains(mark.Value, StringComparison.OrdinalIgnoreCase)))
            .Select(mark => $"{mark.Key} ({mark.Value}): {log.First(line => line.Contains(mark.Value, StringComparison.OrdinalIgnoreCase))}").ToList();
        Assert.True(told.Count == 0, string.Join('\n', told));
    }

    private async Task OpenStudioAsync(HttpClient owner, RunningApp app)
    {
        var code = FirstCode().Match(string.Join('\n', app.Said)).Groups[1].Value;
        Assert.NotEmpty(code);
        _marked["the code of the first run"] = code;
        using (await (await Form.At(owner, "/first-run")).Set("Form.Code", Mark("a wrong first code")).Post())
        {
        }

        using var opened = await (await Form.At(owner, "/first-run")).Set("Form.Code", code).Set("Form.StudioName", Mark("the studio"))
            .Set("Form.PostTo", Mark("where to post")).Set("Form.Name", Mark("the owner")).Set("Form.Email", Address("the owner's address"))
            .Set("Form.Password", Mark("the owner's password")).Post();
        Assert.Equal(HttpStatusCode.Found, opened.StatusCode);
    }

    private async Task ShowACodeAsync(HttpClient owner)
    {
        var before = (await owner.See("/account/codes")).Page;
        var (_, page, _) = await (await Form.Named(owner, "/account/codes", before, "codes-begin").Post()).Read();
        var letters = KeyIn().Match(page).Groups[1].Value;
        Assert.NotEmpty(letters);
        _marked["the app's key"] = letters;
        _marked["the app's key in a row"] = letters.Replace(" ", "", StringComparison.Ordinal);
        var form = Form.Named(owner, "/account/codes", page, "codes-on");
        using (await form.Set("Form.Code", Mark("a wrong code")).Post())
        {
        }

        var now = TimeCode.Of(TimeCode.FromLetters(letters), TimeCode.StepAt(TimeProvider.System.GetUtcNow()));
        var (_, codes, _) = await (await form.Set("Form.Operation", Parcel.NewOperation().Value.ToString()).Set("Form.Code", now).Post()).Read();
        var recovery = RecoveryCodeIn().Matches(codes).Select(match => match.Groups[1].Value).ToList();
        Assert.NotEmpty(recovery);
        recovery.ForEach(code => _marked[$"recovery code {code}"] = code);
        Assert.Equal(HttpStatusCode.OK, (await owner.See("/desk")).Status);
    }

    private async Task JoinAsync(HttpClient student, TestDatabase db)
    {
        var link = await InviteAsync(db, "the student's address");
        using (await (await Form.At(student, link)).Set("Form.Operation", Mark("an operation")).Set("Form.Age", Mark("an age")).Post())
        {
        }

        using var made = await (await Form.At(student, link)).Set("Form.Name", Mark("the student")).Set("Form.Age", "OldEnough")
            .Set("Form.Password", Mark("the student's password")).Post();
        Assert.Equal("/", made.Leads());
    }

    private async Task<string> InviteAsync(TestDatabase db, string what)
    {
        await using var scope = db.Services.CreateAsyncScope();
        var owner = new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: false, IsOwner: true);
        var sent = await scope.ServiceProvider.GetRequiredService<InvitationBook>().InviteAsync(owner, Role.Student, Address(what), byHand: false, Parcel.NewOperation(), Ct);
        var secret = Assert.IsType<Outcome<SentLink>.Done>(sent).Value.Secret ?? "";
        Assert.NotEmpty(secret);
        _marked[$"the secret sent to {what}"] = secret;
        return $"/join/{secret}";
    }

    private async Task<string> AnnounceAsync(HttpClient student, TestDatabase db)
    {
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        Assert.Null((await walk.Answer("reed/1/recognise", ("Reeds[0].HowToRecognise", Mark("a refused answer") + "\u0007"))).To);
        Assert.NotNull((await walk.Answer("reed/1/recognise", ("Reeds[0].HowToRecognise", Mark("how to tell the reed")))).To);
        Assert.NotNull((await walk.Answer("reed/1/bothers", ("Reeds[0].Bothers", Mark("what bothers")))).To);
        await walk.Send();
        await using var context = db.CreateDbContext();
        Assert.Single(await context.Set<Batch>().ToListAsync(Ct));
        return (await IntakeWalk.Begin(student)).Draft;
    }

    private static async Task<(string Bench, string Letter)> TakeInAsync(TestDatabase db)
    {
        var somebody = new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);
        await using var context = db.CreateDbContext();
        var code = (await context.Set<Batch>().SingleAsync(Ct)).Code;
        await using var scope = db.Services.CreateAsyncScope();
        var batch = (await scope.ServiceProvider.GetRequiredService<DeskBook>().BatchAsync(somebody, code, Ct))!.Batch;
        var reed = batch.Reeds[0].Id;
        Assert.IsType<Outcome<BatchView>.Done>(await scope.ServiceProvider.GetRequiredService<ArrivalBook>().RecordAsync(
            somebody, batch.Id, new(new Dictionary<Domain.Reeds.ReedId, ReedArrival> { [reed] = new(Presence.Here, Fitness: Fitness.Fit) }, null), batch.Version, Parcel.NewOperation(), Ct));
        var verdict = Assert.IsType<Outcome<Verdict>.Done>(Verdict.Of(VerdictKind.Improved)).Value;
        Assert.IsType<Outcome<BenchFact>.Done>(await scope.ServiceProvider.GetRequiredService<BenchBook>().RecordAsync(somebody, reed, verdict, Parcel.NewOperation(), Ct));
        return ($"/bench/{reed.Value}", $"/batches/{code}/letter");
    }

    private async Task WorkAsync(HttpClient owner, string bench, string letter, HttpStatusCode noted, HttpStatusCode kept)
    {
        using var note = await (await Form.At(owner, bench, $"{bench}/entries")).Set("Kind", "Note").Set("Words", Mark($"a note {noted}")).Post();
        await Ended(note, noted);
        using var words = await (await Form.At(owner, letter)).Set("Block.closing", Mark($"a letter {kept}")).Post();
        await Ended(words, kept);
    }

    // What somebody types who isn't let in, and what stands in an address.
    private async Task KnockAsync(HttpClient stranger)
    {
        using var wrong = await (await Form.At(stranger, $"/account/sign-in?back=/{Mark("a way back")}"))
            .Set("Form.Email", _marked["the student's address"]).Set("Form.Password", Mark("a wrong password")).Post();
        Assert.Equal(HttpStatusCode.OK, wrong.StatusCode);
        using var strange = await (await Form.At(stranger, "/account/sign-in"))
            .Set("Form.Email", Address("a strange address")).Set("Form.Password", Mark("a stranger's password")).Set("Form.Stay", Mark("no tick")).Post();
        using var forgotten = await (await Form.At(stranger, "/account/forgotten")).Set("Form.Email", Address("a forgetful address")).Post();
        using var stale = await (await Form.At(stranger, "/account/sign-in")).Set("__RequestVerificationToken", Mark("a token")).Post();
        Assert.Equal(HttpStatusCode.BadRequest, stale.StatusCode);
        foreach (var place in new[] { "/account/new-password", "/account/new-email", "/guardian/answer", "/read", "/nothing-of-the-kind" })
        {
            await stranger.See($"{place}/{Secret($"a secret at {place}")}?q={Mark($"a query at {place}")}");
        }
    }

    private async Task TroubleAsync(HttpClient stranger, Form country, Form join, TestDatabase db)
    {
        using var kept = await country.Set("Country", Mark("a country")).Set("Go", "on").Post();
        await Ended(kept, HttpStatusCode.InternalServerError);
        using var refused = await join.Set("Form.Name", Mark("a name in trouble")).Set("Form.Age", "OldEnough").Set("Form.Password", Mark("a password in trouble")).Post();
        await Ended(refused, HttpStatusCode.InternalServerError);

        // Now what is asked of an address with a secret in it can't be answered either.
        await RenameAsync(db);
        foreach (var place in new[] { "/account/new-password", "/guardian/answer", "/read" })
        {
            using var answer = await stranger.GetAsync(new Uri($"{place}/{Secret($"a secret in trouble at {place}")}?q={Mark($"a query in trouble at {place}")}", UriKind.Relative), Ct);
            await Ended(answer, HttpStatusCode.InternalServerError);
        }
    }

    // From now on no row is taken, and PostgreSQL would tell the whole row that it refuses.
    private static async Task RefuseWritesAsync(TestDatabase db)
    {
        await using var context = db.CreateDbContext();
        foreach (var table in Refusing.Select(entity => TableOf(context, entity)).Distinct())
        {
            await Run(context, db.Engine == ClinicEngine.Postgres
                ? $"ALTER TABLE \"{table}\" ADD CONSTRAINT \"{Forced}\" CHECK (false) NOT VALID"
                : $"CREATE TRIGGER \"{Forced}_{table}_a\" BEFORE INSERT ON \"{table}\" BEGIN SELECT RAISE(ABORT, '{Forced}'); END; "
                    + $"CREATE TRIGGER \"{Forced}_{table}_b\" BEFORE UPDATE ON \"{table}\" BEGIN SELECT RAISE(ABORT, '{Forced}'); END");
        }
    }

    private static async Task RenameAsync(TestDatabase db)
    {
        await using var context = db.CreateDbContext();
        foreach (var entity in new[] { "Ticket", "LetterLink" })
        {
            await Run(context, $"ALTER TABLE \"{TableOf(context, entity)}\" RENAME TO \"{Forced}_{entity}\"");
        }
    }

    private static string TableOf(DbContext context, string entity) => context.Model.GetEntityTypes().First(type => type.ClrType.Name == entity).GetTableName()!;

    private static async Task Run(DbContext context, string sql)
    {
        await context.Database.OpenConnectionAsync(Ct);
        await using var command = context.Database.GetDbConnection().CreateCommand();
#pragma warning disable CA2100 // The names are this test's and the model's own.
        command.CommandText = sql;
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(Ct);
    }

    private async Task Ended(HttpResponseMessage answer, HttpStatusCode expected)
    {
        var (status, page, _) = await answer.Read();
        Assert.True(status == expected, $"{answer.RequestMessage!.RequestUri}: {status}\n{page}");
        if (status == HttpStatusCode.InternalServerError)
        {
            _references.Add(ReferenceIn().Match(page).Value);
            Assert.NotEmpty(_references[^1]);
        }
    }

    private string Mark(string what) => _marked[what] = $"heather-{_marked.Count}-on-the-marsh";

    private string Address(string what) => _marked[what] = $"heather-{_marked.Count}-on-the-marsh@harbour.example";

    // As long as a real one, so that it is looked for.
    private string Secret(string what) => _marked[what] = $"heather-{_marked.Count}-on-the-marsh".PadRight(43, 'x');

    private static HttpClient Visitor(RunningApp app) =>
        new(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new UriBuilder(app.Address) { Host = "localhost" }.Uri };

    private static async Task<RunningApp> StartAsync(TestDatabase db)
    {
        var settings = db.Settings.ToDictionary(pair => pair.Key.Replace(":", "__", StringComparison.Ordinal), pair => pair.Value!);
        settings["Web__PlainHttpOnLoopback"] = "true";
        settings["Logging__Detail"] = "Verbose";
        settings["Mail__Folder"] = Directory.CreateTempSubdirectory("reedclinic-marked-").FullName; // where mail is off, nothing is asked for by mail
        settings["Mail__From"] = "studio@quay.example";
        settings["Web__Address"] = "https://reeds.quay.example";
        if (db.Engine == ClinicEngine.Postgres)
        {
            settings["ConnectionStrings__Clinic"] += ";Include Error Detail=true"; // somebody's setting that must not count
        }

        return await RunningApp.StartAsync(await PublishedApp.FolderAsync(), settings, Ct);
    }

    [GeneratedRegex(@"enter this code, once: (\S+)")]
    private static partial Regex FirstCode();

    [GeneratedRegex("<p class=\"key\"><code>([^<]+)</code>")]
    private static partial Regex KeyIn();

    [GeneratedRegex("<li><code>([a-z0-9]{5}(-[a-z0-9]{5}){4})</code></li>")]
    private static partial Regex RecoveryCodeIn();

    [GeneratedRegex("[0-9a-f]{32}")]
    private static partial Regex ReferenceIn();
}
