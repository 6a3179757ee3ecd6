using System.Diagnostics;
using System.Diagnostics.Metrics;
using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using OpenTelemetry.Metrics;
using OpenTelemetry.Trace;
using ReedClinic.Data;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Upkeep;
using ReedClinic.Web.Background;
using ReedClinic.Web.Shared.Insight;
using ReedClinic.Web.Tests.Background;
using ReedClinic.Web.Tests.Bench;
using ReedClinic.Web.Tests.Circuits;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Insight;

/// <summary>
/// What whoever watches the machine is told: the figures that docs/operations/seeing-inside.md promises, and nothing of anybody.
/// The names of the framework's own: OpenTelemetry's semantic conventions for HTTP servers and the .NET runtime.
/// </summary>
public sealed class InsightTests
{
    private const string Figures = "/v1/metrics";
    private const string Traces = "/v1/traces";

    private static readonly string[] Promised =
    [
        "reedclinic.jobs.waiting", "reedclinic.jobs.oldest", "reedclinic.jobs.given_up", "reedclinic.mail.failing", "reedclinic.mail.given_up",
        "reedclinic.records.size", "reedclinic.media.size", "reedclinic.disk.free", "reedclinic.backup.age",
        "reedclinic.sound.analysis", "reedclinic.diagnosis.analysis", "reedclinic.work.failures", "reedclinic.work.stumbling",
        "aspnetcore.components.circuit.active", "aspnetcore.components.handle_event.duration", "http.server.request.duration", "dotnet.gc.heap.total_allocated",
    ];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_collector_gets_every_promised_figure_and_each_is_explained()
    {
        await using var sink = await OtlpSink.OpenAsync();
        await using var host = new WatchedHost(sink.Address);
        var scene = await BenchScene.Open(host, "Wendeline", "blue thread");
        using var teacher = await host.AtTheBench("Ilsebill");
        await using var circuit = await teacher.BenchAsync(scene.Page);
        await circuit.TypeNoteAsync("a whisper");
        await circuit.SaveAsync();
        Assert.Equal(HttpStatusCode.OK, (await teacher.See($"{scene.Page}/evidence")).Status);
        await ReadSoundAsync(host, scene, host.AccountOf("Ilsebill"));
        await host.Services.GetRequiredService<BackupMaker>().MakeAsync(null, withMedia: true, _ => { }, Ct);
        host.Services.GetRequiredService<WorkerStandings>().Failed(QuietWork.Wire);
        await host.TellAllAsync();

        var told = sink.All(Figures);
        Assert.All(Promised, name => Assert.Contains(name, told, StringComparison.Ordinal));
        Assert.All(sink.Came, one => Assert.Equal(("application/x-protobuf", "from-a-file"), (one.Type, one.Key)));
        Assert.All(["GET /bench/{ReedNumber:guid}/evidence", "work Sound", "Event on"], span => Assert.Contains(span, sink.All(Traces), StringComparison.Ordinal));
        var papers = await PapersAsync();
        Assert.All(Promised, name => Assert.Contains($"`{name}`", papers, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Nobody_stands_in_what_is_told_whatever_is_typed_or_stands_in_an_address()
    {
        await using var sink = await OtlpSink.OpenAsync();
        await using var host = new WatchedHost(sink.Address);
        var scene = await BenchScene.Open(host, "Wendeline", "blue thread");
        using var teacher = await host.AtTheBench("Ilsebill");
        await using var circuit = await teacher.BenchAsync(scene.Page);
        await circuit.TypeNoteAsync("a whisper nobody may overhear");
        await circuit.SaveAsync();
        using var visitor = host.Visitor();
        visitor.DefaultRequestHeaders.Add("User-Agent", "Tattletale/1.0");
        visitor.DefaultRequestHeaders.Add("traceparent", "00-5eed0000000000000000000000005eed-5eed000000005eed-01");
        visitor.DefaultRequestHeaders.Add("tracestate", "gossip=heardit");
        visitor.DefaultRequestHeaders.Add("baggage", "rumour=spreads");
        var join = await host.Invite("hille@harbour.example");
        using var joined = await (await Form.At(visitor, join)).Set("Form.Name", "Hillegonda").Set("Form.Password", "sh0rt-w0rd").Post();
        Assert.Equal(HttpStatusCode.OK, (await visitor.See("/account/sign-in?email=nosy@harbour.example")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.See("/nothing/of-that-Kind")).Status);
        await host.Mailed("hille@harbour.example", "/join/");
        await host.TellAllAsync();

        var told = sink.All(Figures) + sink.All(Traces);
        Assert.Contains("POST /join/{Secret}", told, StringComparison.Ordinal);
        Assert.Contains("work Mail", told, StringComparison.Ordinal);
        string[] nobodys =
        [
            "Wendeline", "Ilsebill", "Hillegonda", "harbour.example", "overhear", "blue thread", "sh0rt-w0rd", "Tattletale", "heardit", "spreads", "nosy", "of-that-Kind",
            join.Split('/')[^1], $"{scene.Reed.Value}", $"{scene.Batch.Code}", "127.0.0.1", "::1", "localhost",
        ];
        Assert.All(nobodys, secret => Assert.DoesNotContain(secret, told, StringComparison.OrdinalIgnoreCase));
        Assert.Equal(-1, sink.Bytes().AsSpan().IndexOf(Convert.FromHexString("5eed0000000000000000000000005eed")));
    }

    [Fact]
    public async Task Nothing_goes_anywhere_until_a_setting_says_where()
    {
        await using var host = new ClinicHost();
        Assert.Null(host.Services.GetService<MeterProvider>());
        Assert.Null(host.Services.GetService<TracerProvider>());
        Assert.Empty(host.Services.GetServices<IHostedService>().OfType<InsightWorker>());
    }

    [Fact]
    public async Task A_collector_that_is_away_is_in_nobodys_way()
    {
        await using var sink = await OtlpSink.OpenAsync();
        var away = sink.Address;
        await sink.DisposeAsync();
        await using var host = new WatchedHost(away);
        using var visitor = host.Visitor();
        Assert.Equal(HttpStatusCode.OK, (await visitor.See("/")).Status);
        Assert.False(host.Services.GetRequiredService<MeterProvider>().ForceFlush());
        Assert.Equal(HttpStatusCode.OK, (await visitor.See("/health/work")).Status);
    }

    [Fact]
    public void Of_a_span_only_labels_that_are_listed_and_no_words_of_an_exception_are_let_out()
    {
        using var source = new ActivitySource("ReedClinic.Tests.Labels");
        using var listener = new ActivityListener { ShouldListenTo = one => one == source, Sample = (ref ActivityCreationOptions<ActivityContext> _) => ActivitySamplingResult.AllDataAndRecorded };
        ActivitySource.AddActivityListener(listener);
        using var labels = new InsightLabels();
        using var span = source.StartActivity("GET /join/one-time-secret", ActivityKind.Server)!;
        span.SetTag("http.route", "/join/{Secret}").SetTag("http.request.method", "GET").SetTag("url.path", "/join/one-time-secret").SetTag("brand.new", "typed");
        span.SetStatus(ActivityStatusCode.Error, "Wendeline wasn't found").TraceStateString = "gossip=heardit";

        labels.OnEnd(span);

        Assert.Equal(["http.route", "http.request.method"], span.TagObjects.Select(tag => tag.Key));
        Assert.Equal(("GET /join/{Secret}", ActivityStatusCode.Error, null, null), (span.DisplayName, span.Status, span.StatusDescription, span.TraceStateString));
    }

    [Theory]
    [InlineData("collector")]
    [InlineData("ftp://collector.example")]
    public void An_address_that_is_none_is_refused_at_the_start(string address)
    {
        var settings = new ConfigurationBuilder().AddInMemoryCollection([new(InsightSettings.Address, address)]).Build();
        Assert.Contains("http://127.0.0.1:4318", Assert.Throws<InvalidOperationException>(() => InsightSettings.Read(settings)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_read_long_ago_is_not_told_as_if_it_were_now()
    {
        var time = new Microsoft.Extensions.Time.Testing.FakeTimeProvider();
        using var services = new ServiceCollection().AddMetrics().BuildServiceProvider();
        using var figures = new InsightFigures(services.GetRequiredService<IMeterFactory>(), new WorkerStandings(time), time);
        using var listener = new MeterListener();
        var waiting = new List<double>();
        listener.InstrumentPublished = (instrument, to) =>
        {
            if (instrument.Name == "reedclinic.jobs.waiting" && instrument.Meter.Scope == services.GetRequiredService<IMeterFactory>())
            {
                to.EnableMeasurementEvents(instrument);
            }
        };
        listener.SetMeasurementEventCallback<double>((_, value, _, _) => waiting.Add(value));
        listener.Start();

        figures.Tell(new UpkeepFacts(time.GetUtcNow(), null, null, null, 7, null, 0, true, 0, 0, 1, 2, 3));
        listener.RecordObservableInstruments();
        time.Advance(TimeSpan.FromMinutes(3));
        listener.RecordObservableInstruments();

        Assert.Equal([7.0], waiting);
    }

    private static async Task ReadSoundAsync(WatchedHost host, BenchScene scene, AccountId by)
    {
        var sound = await RecordingParcel.KeepAsync(host, scene.Reed, RecordingKind.ArrivalSound, by, isFromStudio: true, SoundFiles.Wave());
        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        db.Add(new Job { Id = Parcel.NewOperation().Value, Kind = JobKind.Sound, Payload = $"{sound.Id.Value:N}", MadeAt = host.Clock.GetUtcNow(), DueAt = host.Clock.GetUtcNow() });
        await db.SaveChangesAsync(Ct);
        await TroubledHost.UntilAsync(() => db.Set<Job>().AsNoTracking().Any(job => job.Kind == JobKind.Sound && job.DoneAt != null));
    }

    private static async Task<string> PapersAsync()
    {
        using var papers = new StreamReader(typeof(InsightTests).Assembly.GetManifestResourceStream("seeing-inside.md")!);
        return await papers.ReadToEndAsync(Ct);
    }
}
