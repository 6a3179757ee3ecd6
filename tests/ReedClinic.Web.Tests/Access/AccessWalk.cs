using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.TeachingNotes;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Access;

/// <summary>One student's batch with its letter sent, an intake half done, and everybody who might come by.</summary>
internal sealed class AccessWalk
{
    private static readonly Actor Colleague = new(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);

    private readonly ClinicHost _host;
    private readonly Dictionary<string, string> _places = [];
    private readonly Dictionary<string, AccountId> _people = [];
    private readonly Queue<RecordingId> _recordings = [];
    private RecordingId _upload;
    private RecordingId _memo;

    private AccessWalk(ClinicHost host) => _host = host;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static async Task<AccessWalk> OpenAsync(ClinicHost host)
    {
        var walk = new AccessWalk(host);
        await walk.PeopleAsync();
        var batch = (await host.Announce("Ines", "green thread")).Batch;
        await using var scope = host.Services.CreateAsyncScope();
        var code = batch.Code.ToString();
        await walk.SendLetterAsync(scope.ServiceProvider, batch.Code);
        await walk.RecordAsync(scope.ServiceProvider, batch.Reeds[0].Id);
        var teacher = new Actor(walk._people["teacher"], null, IsTeacher: true, IsOwner: false);
        var note = await scope.ServiceProvider.GetRequiredService<OwnNoteBook>().BeginAsync(teacher, new("Corners", "Mind {place}.", null, []), Parcel.NewOperation(), Ct);
        walk._places["{Note:guid}"] = Assert.IsType<Outcome<OwnNoteView>.Done>(note).Value.Id.Value.ToString();
        walk._places["{Entry:guid}"] = await EntryAsync(scope.ServiceProvider);
        walk._places["{Code}"] = code;
        walk._places["{Code:int}"] = "500";
        walk._places["{Secret}"] = "made-up";
        walk._places["{Number:int}"] = "1";
        walk._places["{ReedNumber:guid}"] = walk._places["{reedId:guid}"] = batch.Reeds[0].Id.Value.ToString();
        Reed = batch.Reeds[0].Id.Value.ToString();
        walk._places["{Reed:guid}"] = Reed;
        walk._places["{Kind}"] = nameof(RecordingKind.ArrivalSound);
        walk._places["{offset:int}"] = "0";
        walk._places["{Draft:guid}"] = walk._places["{draft:guid}"] = await DraftAsync(scope.ServiceProvider, batch);
        await walk.AnswersForAsync(scope.ServiceProvider, "guardian", "own");
        await walk.AnswersForAsync(scope.ServiceProvider, "elsewhere", "other");
        walk._places["{Id:guid}"] = walk._places["{Ward:guid}"] = batch.Student.Value.ToString();
        walk._places["{Secret}"] = new string('x', 43);
        walk._places["{Reed:int}"] = walk._places["{reed:int}"] = "1";
        return walk;
    }

    /// <summary>The reed of the batch, for forms that name one.</summary>
    public static string Reed { get; private set; } = "";

    private static async Task<string> EntryAsync(IServiceProvider services)
    {
        var owner = new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: false, IsOwner: true);
        var words = new StudioEntryWords(StudioEntryKind.Adjustment, "tap it dry", "It lets the water out.") { Zone = Zone.WholeReed, Undo = Reversible.Yes, Caution = "Gently." };
        var entry = await services.GetRequiredService<CatalogueBook>().AddAsync(owner, words, Parcel.NewOperation(), Ct);
        return Assert.IsType<Outcome<StudioEntryView>.Done>(entry).Value.Id.Value.ToString();
    }

    /// <summary>Somebody at the door, signed in unless it is a visitor. Each time anew: some addresses sign out.</summary>
    public async Task<HttpClient> ComeAsync(string who)
    {
        return _people.TryGetValue(who, out var person) ? await _host.SignedIn(person) : _host.Visitor();
    }

    /// <summary>An address of the table with the scene's things in it.</summary>
    public string Fill(string row)
    {
        var path = row[(row.IndexOf(' ', StringComparison.Ordinal) + 1)..];
        var key = path.Contains("reed/", StringComparison.Ordinal) ? "recognise" : "tuning";
        if (path.Contains("{id:guid}", StringComparison.Ordinal))
        {
            var isGoing = path.EndsWith("/received", StringComparison.Ordinal) || path.EndsWith("/done", StringComparison.Ordinal) || path.Contains("/at/", StringComparison.Ordinal);
            path = path.Replace("{id:guid}", (isGoing ? _upload : path.EndsWith("/letter", StringComparison.Ordinal) ? _memo : _recordings.Dequeue()).Value.ToString(), StringComparison.Ordinal);
        }

        foreach (var (hole, thing) in _places.Append(new("{Key}", key)).Append(new("{key}", key)))
        {
            path = path.Replace(hole, thing, StringComparison.Ordinal);
        }

        Assert.DoesNotContain('{', path);
        return path;
    }

    private async Task PeopleAsync()
    {
        await using var scope = _host.Services.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<AccountRegister>();
        var studio = scope.ServiceProvider.GetRequiredService<StudioBook>();
        var code = _host.Services.GetRequiredService<FirstRunCode>().Text;
        _people["owner"] = Account(await studio.Open(code, "Quay Reeds", null, New("Mara"), Parcel.NewOperation(), Ct));
        _people["teacher"] = Account(await accounts.AdmitAsync(New("Ilse"), Role.Teacher, Parcel.NewOperation(), Ct));
        _people["other"] = Account(await accounts.AdmitAsync(New("Tove"), Role.Student, Parcel.NewOperation(), Ct));
        _people["own"] = Account(await accounts.AdmitAsync(New("Ines"), Role.Student, Parcel.NewOperation(), Ct));
    }

    // Their sign-in is one without any role, as the link to a guardian makes it.
    private async Task AnswersForAsync(IServiceProvider services, string guardian, string student)
    {
        var accounts = services.GetRequiredService<UserManager<ClinicAccount>>();
        var db = services.GetRequiredService<ClinicDb>();
        var rosa = ClinicHost.NewEmail("Rosa");
        var account = new ClinicAccount { Id = Parcel.NewOperation().Value, UserName = rosa, Email = rosa, DisplayName = "Rosa" };
        Assert.True((await accounts.CreateAsync(account, ClinicHost.Password)).Succeeded);
        _people[guardian] = new AccountId(account.Id);
        var theirs = _people[student];
        var ward = await db.Set<Student>().SingleAsync(person => person.Account == theirs, Ct);
        var answer = new Guardianship(new GuardianshipId(Parcel.NewOperation().Value), ward.Id, "Rosa", rosa, DateTimeOffset.UnixEpoch);
        answer.Give(new AccountId(account.Id), DateTimeOffset.UnixEpoch);
        db.Add(answer);
        await db.SaveChangesAsync(Ct);
    }

    // One for every try, because some remove it; and one that the teacher is sending.
    private async Task RecordAsync(IServiceProvider services, ReedId reed)
    {
        for (var number = 0; number < 70; number++)
        {
            _recordings.Enqueue((await RecordingParcel.KeepAsync(_host, reed, RecordingKind.ArrivalSound, _people["own"], isFromStudio: false, findings: MadeReadings.Crow())).Id);
        }

        _places["{Recording:guid}"] = _recordings.Dequeue().Value.ToString();

        _memo = (await RecordingParcel.KeepAsync(_host, reed, RecordingKind.VoiceMemo, _people["teacher"], isFromStudio: true)).Id;
        var teacher = new Actor(_people["teacher"], null, IsTeacher: true, IsOwner: false);
        var begun = await services.GetRequiredService<UploadBook>().StartAsync(teacher, new RecordingWish(reed, RecordingKind.VoiceMemo, 100), Parcel.NewOperation(), Ct);
        _upload = Assert.IsType<Outcome<UploadView>.Done>(begun).Value.Id;
    }

    private static NewAccount New(string name) => new(name, ClinicHost.NewEmail(name), ClinicHost.Password) { Age = AgeAnswer.OldEnough };

    private static AccountId Account(Outcome<AccountId> made) => Assert.IsType<Outcome<AccountId>.Done>(made).Value;

    private static async Task<string> DraftAsync(IServiceProvider services, Batch batch)
    {
        var own = new Actor(new AccountId(Parcel.NewOperation().Value), batch.Student, false, false);
        var started = await services.GetRequiredService<IntakeBook>().StartAsync(own, Parcel.NewOperation(), Ct);
        return Assert.IsType<Outcome<DraftView>.Done>(started).Value.Id.Value.ToString();
    }

    private async Task SendLetterAsync(IServiceProvider services, BatchCode code)
    {
        var letters = services.GetRequiredService<LetterBook>();
        var view = (await letters.ReadAsync(Colleague, code, Ct))!;
        var picture = Assert.IsType<Outcome<NotePictureView>.Done>(await services.GetRequiredService<NotePictureBook>().KeepAsync(Colleague, PictureFiles.Png(), Parcel.NewOperation(), Ct)).Value.Key;
        _places["{Picture}"] = picture;
        var words = new Dictionary<string, string> { ["closing"] = new PictureMark(picture, "A reed.").Written };
        view = Assert.IsType<Outcome<LetterView>.Done>(await letters.SaveAsync(Colleague, code, words, view.Version, Parcel.NewOperation(), Ct)).Value;
        foreach (var gap in view.Gaps)
        {
            view = Assert.IsType<Outcome<LetterView>.Done>(await letters.WaiveAsync(Colleague, code, gap.Key, "next time", Parcel.NewOperation(), Ct)).Value;
        }

        Assert.IsType<Outcome<LetterView>.Done>(await letters.SendAsync(Colleague, code, view.Mark, Parcel.NewOperation(), Ct));
    }
}
