using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Tests.Faults;

/// <summary>One thing that somebody does: what is looked at before, and what is done, with everything that a form would bring again.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Look">What the page shows before; nothing goes wrong with it.</param>
/// <param name="Do">Does it; true when it was told to be done, false for any other answer in words.</param>
internal sealed record Deed(string Name, Func<Task> Look, Func<Task<bool>> Do);

/// <summary>What people do one after the other, from nothing to the end.</summary>
internal abstract class WholeWay
{
    private readonly List<Deed> _deeds = [];

    public IReadOnlyList<Deed> Deeds => _deeds;

    /// <summary>What there is before the first of them.</summary>
    public abstract Task PrepareAsync();

    /// <summary>Something is done with an operation of its own, the same one each time it is pressed; what comes of it is kept.</summary>
    protected void Add<T>(string name, Func<OperationId, Task<Outcome<T>>> act, Action<T>? keep = null, Func<Task>? look = null)
    {
        var operation = Intake.IntakeScene.Operation();
        _deeds.Add(new(name, look ?? (() => Task.CompletedTask), async () =>
        {
            if (await act(operation) is not Outcome<T>.Done(var value))
            {
                return false;
            }

            keep?.Invoke(value);
            return true;
        }));
    }

    /// <summary>The same for what has no operation and says yes or no.</summary>
    protected void AddPlain(string name, Func<Task<bool>> act, Func<Task>? look = null) => _deeds.Add(new(name, look ?? (() => Task.CompletedTask), act));

    /// <summary>A secret that a test chose instead of the program, and what is kept of it.</summary>
    protected static (string Secret, string Hash) KnownSecret { get; } = Known(new string('s', 43));

    /// <summary>The program's first key, which would else be made in the middle of something.</summary>
    protected static void MakeKeys(TestDatabase database) => database.Services.GetRequiredService<IDataProtectionProvider>().CreateProtector("first").Protect("");

    private static (string, string) Known(string secret) => (secret, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret))));

    /// <summary>What something before gave.</summary>
    protected static T There<T>(T? value)
        where T : struct => value ?? throw new InvalidOperationException("What comes before hasn't been done.");
}
