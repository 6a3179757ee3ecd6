using System.Diagnostics;
using System.Diagnostics.Metrics;
using ReedClinic.Domain.Upkeep;
using ReedClinic.Web.Background;

namespace ReedClinic.Web.Shared.Insight;

/// <summary>The figures of the program's own; what each means stands in docs/operations/seeing-inside.md. They cost nothing while nobody listens.</summary>
public sealed class InsightFigures : IDisposable
{
    /// <summary>The name that figures and spans go by.</summary>
    public const string Name = "ReedClinic";

    /// <summary>The label that says which work: a name of <see cref="QuietWork"/>.</summary>
    public const string Work = "reedclinic.work";

    /// <summary>The label that says what came of it.</summary>
    public const string Outcome = "reedclinic.outcome";

    /// <summary>The label that says which disk.</summary>
    public const string Place = "reedclinic.place";

    // What is older than three looks isn't told as if it were now.
    private static readonly TimeSpan Old = TimeSpan.FromMinutes(3);

    // From the quiet line (some milliseconds) to a long clip on a slow machine; in seconds.
    private static readonly InstrumentAdvice<double> Seconds = new() { HistogramBucketBoundaries = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 30] };

    private readonly ActivitySource _spans = new(Name);
    private readonly Meter _meter;
    private readonly Histogram<double> _sound;
    private readonly Histogram<double> _reasoning;
    private readonly TimeProvider _time;
    private UpkeepFacts? _facts;

    /// <summary>Makes the instruments.</summary>
    /// <param name="meters">Where they belong.</param>
    /// <param name="standings">How the work behind the pages goes.</param>
    /// <param name="time">The clock.</param>
    public InsightFigures(IMeterFactory meters, WorkerStandings standings, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(meters);
        ArgumentNullException.ThrowIfNull(standings);
        _time = time;
        _meter = meters.Create(Name);
        _sound = _meter.CreateHistogram("reedclinic.sound.analysis", "s", "Decoding a kept sound and taking its readings", null, Seconds);
        _reasoning = _meter.CreateHistogram("reedclinic.diagnosis.analysis", "s", "Working out what may be behind a reed's trouble", null, Seconds);
        _meter.CreateObservableCounter("reedclinic.work.failures", () => standings.Failures.Select(one => new Measurement<long>(one.Value, Of(one.Key))), "{failure}", "Failures of work behind the pages");
        _meter.CreateObservableGauge("reedclinic.work.stumbling", () => standings.Stumbling.Select(one => new Measurement<double>((time.GetUtcNow() - one.Since).TotalSeconds, Of(one.Work))), "s", "For how long work behind the pages has been failing");
        Observe("reedclinic.jobs.waiting", "{job}", "Work that waits, those that failed and will be tried again among it", facts => facts.WorkDue);
        Observe("reedclinic.jobs.oldest", "s", "How long the oldest of it has waited", facts => facts.OldestDue is { } since ? (facts.Now - since).TotalSeconds : 0);
        Observe("reedclinic.jobs.given_up", "{job}", "Work that was given up, mails left out", facts => facts.WorkGivenUp);
        Observe("reedclinic.mail.failing", "{mail}", "Mails that failed and will be tried again", facts => facts.MailsFailing);
        Observe("reedclinic.mail.given_up", "{mail}", "Mails that were given up", facts => facts.MailsGivenUp);
        Observe("reedclinic.backup.age", "s", "How old the newest whole back-up is; nothing where there is none", facts => facts.LastBackup is { } last ? (facts.Now - last).TotalSeconds : null);
        Observe("reedclinic.records.size", "By", "What the records take", facts => facts.RecordsBytes);
        Observe("reedclinic.media.size", "By", "What sounds and photographs take", facts => facts.MediaBytes);
        _meter.CreateObservableGauge("reedclinic.disk.free", Free, "By", "What is free on a disk");
    }

    /// <summary>Takes what was read of the machine, to be told until it is old.</summary>
    /// <param name="facts">What was read.</param>
    public void Tell(UpkeepFacts facts) => Volatile.Write(ref _facts, facts);

    /// <summary>A kept sound was read.</summary>
    /// <param name="began">When that began, in the clock's own steps.</param>
    /// <param name="wasRead">False when it was refused.</param>
    public void SoundRead(long began, bool wasRead) => _sound.Record(_time.GetElapsedTime(began).TotalSeconds, new KeyValuePair<string, object?>(Outcome, wasRead ? "read" : "refused"));

    /// <summary>The causes of a reed's trouble were weighed.</summary>
    /// <param name="began">When that began, in the clock's own steps.</param>
    public void Reasoned(long began) => _reasoning.Record(_time.GetElapsedTime(began).TotalSeconds);

    /// <summary>A span round one piece of work behind the pages; null while nobody listens.</summary>
    /// <param name="work">Which work.</param>
    public Activity? Span(QuietWork work) => _spans.StartActivity($"work {work}")?.SetTag(Work, work.ToString());

    /// <inheritdoc />
    public void Dispose()
    {
        _meter.Dispose();
        _spans.Dispose();
    }

    private static KeyValuePair<string, object?> Of(QuietWork work) => new(Work, work.ToString());

    private void Observe(string name, string unit, string means, Func<UpkeepFacts, double?> of) =>
        _meter.CreateObservableGauge(name, () => Now() is { } facts && of(facts) is { } value ? [new Measurement<double>(value)] : Array.Empty<Measurement<double>>(), unit, means);

    private IEnumerable<Measurement<double>> Free()
    {
        var facts = Now();
        if (facts?.DiskFree is { } media)
        {
            yield return new(media, new KeyValuePair<string, object?>(Place, "media"));
        }

        if (facts?.RecordsFree is { } records)
        {
            yield return new(records, new KeyValuePair<string, object?>(Place, "records"));
        }
    }

    private UpkeepFacts? Now() => Volatile.Read(ref _facts) is { } facts && _time.GetUtcNow() - facts.Now < Old ? facts : null;
}
