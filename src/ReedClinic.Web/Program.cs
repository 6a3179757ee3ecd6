using ReedClinic.Web;
using ReedClinic.Web.Shared.Hosting;

var builder = WebApplication.CreateBuilder(args);

builder.AddStudioLog();
builder.AddLimits();
builder.AddLanguage();
builder.AddHealth();
builder.AddPages();

var app = builder.Build();

app.UseReferenceOnTrouble();
app.UseGuardHeaders();
app.UseLanguage();
app.UsePages();

app.MapHealth();
app.MapLamp();
app.MapPages<App>();
app.AnnounceAddress();

await app.RunAsync().ConfigureAwait(false);
