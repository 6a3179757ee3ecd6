using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Browser.Tests.Running;
using ReedClinic.Data;

namespace ReedClinic.Browser.Tests.Injection;

/// <summary>
/// The demo studio with a hostile text in place of everything that somebody typed, put straight into the database: as if every
/// check on the way in had failed.
/// </summary>
internal sealed class HostileStudio
{
    // Words that people type, by the name of their column; letters and drafts hold theirs as JSON.
    private static readonly HashSet<string> Typed =
    [
        "DisplayName", "Name", "Country", "Device", "Bothers", "Damage", "HowToRecognise", "LastTried", "Likes", "TiedBy", "UpperMark", "Text", "Answer", "ArrivalNote",
        "Words", "AmountWords", "HabitWords", "LessonWords", "StrengthWords", "Reason", "PostTo", "PrivacyContact", "PrivacyWords", "WhatChanged",
    ];

    private static readonly HashSet<string> Kinds = ["script", "handler", "address", "drawing", "style", "unclosed", "attribute", "template"];

    private readonly List<Vector> _vectors = [.. HostileTexts.Sendable.Where(vector => Kinds.Contains(vector.Kind))];
    private readonly HashSet<int> _used = [];
    private int _next;

    /// <summary>Those that found no place.</summary>
    public IEnumerable<Vector> Unused => _vectors.Where(vector => !_used.Contains(vector.Line));

    /// <summary>Writes them.</summary>
    public async Task FillAsync(ClinicApp app, CancellationToken ct)
    {
        await using var db = await app.Services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContextAsync(ct);
        await db.LetLettersChangeAsync(ct);
        foreach (var row in await RowsAsync(db, ct))
        {
            foreach (var property in db.Entry(row).Properties.Where(property => property.CurrentValue is string { Length: > 0 }))
            {
                Fill(property);
            }
        }

        await db.SaveChangesAsync(ct);
    }

    private static async Task<List<object>> RowsAsync(ClinicDb db, CancellationToken ct) =>
    [
        .. await db.Users.ToListAsync(ct),
        .. await db.Set<Domain.People.Student>().ToListAsync(ct),
        .. await db.Set<Domain.People.Studio>().ToListAsync(ct),
        .. await db.Set<Domain.People.Guardianship>().ToListAsync(ct),
        .. await db.Set<Domain.People.StaffNote>().ToListAsync(ct),
        .. await db.Set<Domain.Intake.Batch>().ToListAsync(ct),
        .. await db.Set<Domain.Intake.Reed>().ToListAsync(ct),
        .. await db.Set<Domain.Intake.Question>().ToListAsync(ct),
        .. await db.Set<Domain.Intake.IntakeDraft>().ToListAsync(ct),
        .. await db.Set<Domain.Bench.BenchEntry>().ToListAsync(ct),
        .. await db.Set<Domain.Recurrence.CommonThread>().ToListAsync(ct),
        .. await db.Set<Domain.Letters.LetterVersion>().ToListAsync(ct),
        .. await db.Set<Domain.Letters.LetterSending>().ToListAsync(ct),
    ];

    private void Fill(PropertyEntry property)
    {
        var (name, stands) = (property.Metadata.Name, (string)property.CurrentValue!);
        var most = property.Metadata.GetMaxLength() ?? int.MaxValue;
        if (Typed.Contains(name))
        {
            property.CurrentValue = Next(most);
        }
        else if (name == "Payload" && JsonNode.Parse(stands) is { } json)
        {
            Fill(json);
            property.CurrentValue = json.ToJsonString();
        }
    }

    // Sentences, not names of kinds.
    private void Fill(JsonNode json)
    {
        switch (json)
        {
            case JsonObject whole:
                foreach (var (name, value) in whole.ToList())
                {
                    if (IsSentence(value))
                    {
                        whole[name] = Next(300);
                    }
                    else if (value is not null)
                    {
                        Fill(value);
                    }
                }

                break;
            case JsonArray list:
                for (var i = 0; i < list.Count; i++)
                {
                    if (IsSentence(list[i]))
                    {
                        list[i] = Next(300);
                    }
                    else if (list[i] is { } value)
                    {
                        Fill(value);
                    }
                }

                break;
        }
    }

    private static bool IsSentence(JsonNode? node) => node is JsonValue value && value.TryGetValue<string>(out var text) && text.Contains(' ', StringComparison.Ordinal);

    private string Next(int most)
    {
        Vector vector;
        do
        {
            vector = _vectors[_next++ % _vectors.Count];
        }
        while (vector.Text.Length > most || string.IsNullOrWhiteSpace(vector.Text));

        _used.Add(vector.Line);
        return vector.Text;
    }
}
