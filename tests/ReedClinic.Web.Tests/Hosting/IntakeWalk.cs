namespace ReedClinic.Web.Tests.Hosting;

/// <summary>A student at the intake, screen by screen, as a browser without scripts would do it.</summary>
public sealed class IntakeWalk
{
    private readonly HttpClient _student;

    private IntakeWalk(HttpClient student, string draft) => (_student, Draft) = (student, draft);

    /// <summary>The intake's address.</summary>
    public string Draft { get; }

    /// <summary>Begins an intake.</summary>
    public static async Task<IntakeWalk> Begin(HttpClient student)
    {
        using var begun = await (await Form.At(student, "/intake")).Post();
        var first = begun.Leads()!;
        return new IntakeWalk(student, first[..first.LastIndexOf('/')]);
    }

    /// <summary>Answers one screen and says where it led; null when it stayed, be it by way of the same screen's address.</summary>
    public async Task<(string? To, string Page)> Answer(string step, params (string Field, string Typed)[] answers)
    {
        var form = await Form.At(_student, $"{Draft}/{step}");
        foreach (var (field, typed) in answers)
        {
            form.Set(field, typed);
        }

        using var answer = await form.Set("Go", "on").Post();
        var (_, page, to) = await answer.Read();
        return to?.EndsWith("?again=yes", StringComparison.Ordinal) == true ? (null, (await _student.See(to)).Page) : (to, page);
    }

    /// <summary>Says everything that is needed about so many reeds.</summary>
    public async Task Fill(int reeds)
    {
        await Answer("country", ("Country", "Norway"));
        await Answer("how-many", ("HowMany", $"{reeds}"));
        for (var i = 0; i < reeds; i++)
        {
            await Answer($"reed/{i + 1}/recognise", ($"Reeds[{i}].HowToRecognise", $"thread number {i + 1}"));
            await Answer($"reed/{i + 1}/bothers", ($"Reeds[{i}].Bothers", "The low notes come late."), ($"Reeds[{i}].Response", "2"));
            await Answer($"reed/{i + 1}/permission", ($"Reeds[{i}].Permission", "SafeChangesOnly"));
        }
    }

    /// <summary>Sends it and gives the batch's code.</summary>
    public async Task<string> Send()
    {
        using var sent = await (await Form.At(_student, $"{Draft}/look-over")).Post();
        var to = sent.Leads() ?? "";
        Assert.StartsWith("/batches/", to, StringComparison.Ordinal);
        return to["/batches/".Length..].Split('?')[0];
    }
}
