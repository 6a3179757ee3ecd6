using ReedClinic.Data;
using ReedClinic.Web;
using ReedClinic.Web.Account;
using ReedClinic.Web.Background;
using ReedClinic.Web.Features.Bench;
using ReedClinic.Web.Features.Bench.Chapters;
using ReedClinic.Web.Features.Bench.Line;
using ReedClinic.Web.Features.Diagnosis;
using ReedClinic.Web.Features.Intake;
using ReedClinic.Web.Features.Letters;
using ReedClinic.Web.Features.Letters.Links;
using ReedClinic.Web.Features.Privacy;
using ReedClinic.Web.Features.Readings;
using ReedClinic.Web.Features.Recordings;
using ReedClinic.Web.Features.TeachingNotes;
using ReedClinic.Web.Mailing;
using ReedClinic.Web.Shared.Circuits;
using ReedClinic.Web.Shared.Hosting;
using ReedClinic.Web.Shared.Insight;
using ReedClinic.Web.Shared.Writes;

if (await Commands.RunAsync(args, new Announcement()).ConfigureAwait(false) is { } code)
{
    return code;
}

var builder = WebApplication.CreateBuilder(args);

builder.AddSecrets();
builder.AddStudioLog();
builder.AddLimits();
builder.AddRateLimits();
builder.AddDoorway();
builder.AddLanguage();
builder.AddHealth();
builder.AddPages();
builder.AddCircuits();
builder.AddWriteBudget();
builder.AddIntake();
builder.AddPrivacy();
builder.AddLetters();
builder.AddReasoning();
builder.AddNotes();
builder.AddMail();
builder.AddAccounts(builder.Services.AddClinicData(builder.Configuration, builder.Environment.ContentRootPath));
builder.AddWorkers();
builder.AddInsight();
builder.Services.AddSingleton(ChildPrograms.Of(builder.Configuration)).AddSingleton<ChildDecoder>();

var app = builder.Build();
if (!await app.OpenStudioAsync().ConfigureAwait(false))
{
    return 1;
}

app.UseForwardedHeaders();
app.UseReferenceOnTrouble();
app.UseRecordsAway();
app.UseGuardHeaders();
app.UseLanguage();
app.UseDoorway();
app.UseAccounts();
app.UseKeptLetters();
app.UseRefusalNotes();
app.UseCircuitDoor();
app.UsePages();
app.UseWriteBudget();
app.UseRateLimits();

app.TakeFirstTurn();
app.MapHealth();
app.MapLamp();
app.MapAccounts();
app.MapPasskeys();
app.MapIntake();
app.MapBench();
app.MapBenchLine();
app.MapBenchChapters();
app.MapPrivacy();
app.MapRecordings();
app.MapReadings();
app.MapLetterFiles();
app.MapNotePictures();
app.MapLetterCorrections();
app.MapLetterLinks();
app.MapPages<App>();
app.AnnounceAddress();
app.AnnounceMail();

await app.RunAsync().ConfigureAwait(false);
return 0;
