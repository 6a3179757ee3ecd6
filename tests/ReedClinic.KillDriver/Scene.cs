using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.KillDriver;

/// <summary>One reed on the bench of an otherwise empty studio, and a look at what is stored about it.</summary>
public sealed class Scene : IAsyncDisposable
{
    /// <summary>Who works at the bench.</summary>
    public const string Email = "bench@harbour.example";

    /// <summary>An invented password.</summary>
    public const string Password = "a quiet tide at four o'clock";

    /// <summary>The invented key of an authenticator app: whoever works here shows more than a password.</summary>
    public static byte[] CodeKey { get; } = "a key of twenty byte"u8.ToArray();

    /// <summary>The field of the bench's form with the operation id.</summary>
    public const string OperationField = "Operation";

    private readonly ServiceProvider _services;

    private Scene(ServiceProvider services, IReadOnlyDictionary<string, string> settings, ReedId reed)
    {
        _services = services;
        Settings = settings;
        Reed = reed;
    }

    /// <summary>The reed.</summary>
    public ReedId Reed { get; }

    /// <summary>The environment that makes the app use this database.</summary>
    public IReadOnlyDictionary<string, string> Settings { get; }

    /// <summary>The page that holds the form.</summary>
    public string Page => $"/bench/{Reed.Value}";

    /// <summary>Where the form goes, from a page whose circuit isn't up.</summary>
    public string PostTo => $"/bench/{Reed.Value}/entries";

    /// <summary>Fills an empty database.</summary>
    public static async Task<Scene> MakeAsync(string engine, string connection, CancellationToken ct)
    {
        var settings = new Dictionary<string, string> { ["Database__Engine"] = engine, ["ConnectionStrings__Clinic"] = connection };
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(settings.Select(pair => KeyValuePair.Create(pair.Key.Replace("__", ":", StringComparison.Ordinal), (string?)pair.Value)))
            .Build();
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddClinicData(configuration, contentRoot: AppContext.BaseDirectory);
        var provider = services.BuildServiceProvider();
        await provider.GetRequiredService<ClinicSchema>().MigrateAsync(ct).ConfigureAwait(false);
        var scope = provider.CreateAsyncScope();
        await using var _ = scope.ConfigureAwait(false);
        return new Scene(provider, settings, await ReedAsync(scope.ServiceProvider, ct).ConfigureAwait(false));
    }

    /// <summary>A note as the bench's form sends it.</summary>
    public static void WriteNote(Dictionary<string, string> form, Guid operation, string text)
    {
        form["Kind"] = nameof(EntryKind.Note);
        form[OperationField] = operation.ToString();
        form["Words"] = text;
    }

    /// <summary>Every note on the reed.</summary>
    public async Task<IReadOnlyCollection<StoredNote>> StoredAsync(CancellationToken ct)
    {
        var db = await _services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var notes = await db.Set<Note>().AsNoTracking().Where(note => note.ReedId == Reed).ToListAsync(ct).ConfigureAwait(false);
        return [.. notes.Select(note => new StoredNote(note.Id.Value, note.OperationId.Value, note.Words))];
    }

    /// <inheritdoc />
    public ValueTask DisposeAsync() => _services.DisposeAsync();

    private static async Task<ReedId> ReedAsync(IServiceProvider services, CancellationToken ct)
    {
        var owner = Done(await services.GetRequiredService<StudioBook>().Open(
            services.GetRequiredService<FirstRunCode>().Text, "Quay", null, new NewAccount("Bench", Email, Password) { Age = AgeAnswer.OldEnough }, NewOperation(), ct)
            .ConfigureAwait(false));
        await AskForCodesAsync(services, owner, ct).ConfigureAwait(false);
        var accounts = services.GetRequiredService<AccountBook>();
        var account = Done(await services.GetRequiredService<AccountRegister>().AdmitAsync(
            new NewAccount("Sender", "sender@harbour.example", Password) { Age = AgeAnswer.OldEnough }, Role.Student, NewOperation(), ct).ConfigureAwait(false));
        var sender = await accounts.ActorFor(account, ct).ConfigureAwait(false);
        var intake = services.GetRequiredService<IntakeBook>();
        var draft = Done(await intake.StartAsync(sender!, NewOperation(), ct).ConfigureAwait(false));
        var form = new IntakeForm
        {
            Reeds = [new ReedForm { HowToRecognise = "green thread", Bothers = "hard to start", Permission = nameof(Permission.SafeChangesOnly) }],
        };
        Done(await intake.SaveAsync(sender!, draft.Id, form, draft.Version, NewOperation(), ct).ConfigureAwait(false));
        var sent = Done(await intake.SubmitAsync(sender!, draft.Id, NewOperation(), ct).ConfigureAwait(false));
        return sent.Batch.Reeds[0].Id;
    }

    private static async Task AskForCodesAsync(IServiceProvider services, AccountId owner, CancellationToken ct)
    {
        var db = services.GetRequiredService<ClinicDb>();
        var account = await db.Users.SingleAsync(row => row.Id == owner.Value, ct).ConfigureAwait(false);
        account.CodeKey = services.GetRequiredService<CodeSeal>().Close(CodeKey);
        account.CodeSince = account.CreatedAt;
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
    }

    private static T Done<T>(Outcome<T> outcome) => outcome is Outcome<T>.Done done
        ? done.Value
        : throw new InvalidOperationException($"The scene can't be made: {outcome}");

    private static OperationId NewOperation() => new(Guid.CreateVersion7(TimeProvider.System.GetUtcNow()));
}
