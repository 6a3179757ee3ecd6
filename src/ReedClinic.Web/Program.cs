using ReedClinic.Data;
using ReedClinic.Data.Engine;
using ReedClinic.Web;
using ReedClinic.Web.Shared.Hosting;

var builder = WebApplication.CreateBuilder(args);

builder.AddStudioLog();
builder.AddLimits();
builder.AddLanguage();
builder.AddHealth();
builder.AddPages();
builder.Services.AddClinicData(builder.Configuration, builder.Environment.ContentRootPath);

var app = builder.Build();
await app.Services.GetRequiredService<ClinicSchema>().MigrateAsync(app.Lifetime.ApplicationStopping).ConfigureAwait(false);

app.UseReferenceOnTrouble();
app.UseGuardHeaders();
app.UseLanguage();
app.UsePages();

app.MapHealth();
app.MapLamp();
app.MapPages<App>();
app.AnnounceAddress();

await app.RunAsync().ConfigureAwait(false);
