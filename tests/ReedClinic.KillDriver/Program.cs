using System.Globalization;
using ReedClinic.KillDriver;

// ReedClinic.KillDriver FOLDER sqlite|postgres CONNECTION ROUNDS SEED
// Posts bench entries to the published app in FOLDER, kills it in the middle of each round, and compares what it
// acknowledged with what is stored. Ends with 0 when nothing was lost, doubled or invented.
// ReedClinic.KillDriver sign-in-times FOLDER sqlite|postgres CONNECTION TRIES
// Measures refused sign-ins for addresses with and without an account.
// ReedClinic.KillDriver publish
// Publishes the app and says into which folder.
if (args is ["publish"])
{
    await Console.Out.WriteLineAsync(await PublishedApp.FolderAsync().ConfigureAwait(false)).ConfigureAwait(false);
    return 0;
}

if (args is ["sign-in-times", var published, var on, var database, var tries])
{
    await Console.Out.WriteLineAsync(await SignInTimes.RunAsync(published, on, database, int.Parse(tries, CultureInfo.InvariantCulture), CancellationToken.None).ConfigureAwait(false)).ConfigureAwait(false);
    return 0;
}

if (args is not [var folder, var engine, var connection, var roundsText, var seedText])
{
    await Console.Error.WriteLineAsync("FOLDER sqlite|postgres CONNECTION ROUNDS SEED").ConfigureAwait(false);
    return 64;
}

var rounds = int.Parse(roundsText, CultureInfo.InvariantCulture);
var seed = int.Parse(seedText, CultureInfo.InvariantCulture);
var total = new Comparison(0, 0, 0);
await using var scene = await Scene.MakeAsync(engine, connection, CancellationToken.None).ConfigureAwait(false);
using var driver = new KillRounds(folder, scene, seed);
await SayAsync($"engine={engine} rounds={rounds} seed={seed}").ConfigureAwait(false);
for (var round = 1; round <= rounds; round++)
{
    await CountAsync($"round={round}", await driver.RunAsync(CancellationToken.None).ConfigureAwait(false)).ConfigureAwait(false);
}

await CountAsync("settled", await driver.SettleAsync(CancellationToken.None).ConfigureAwait(false)).ConfigureAwait(false);
await SayAsync(
    $"summary engine={engine} kills={rounds} acknowledged={driver.Acknowledged} lost={total.Lost} duplicates={total.Duplicates} strangers={total.Strangers}")
    .ConfigureAwait(false);
return total.Clean ? 0 : 1;

async Task CountAsync(string what, Comparison found)
{
    total = new Comparison(total.Lost + found.Lost, total.Duplicates + found.Duplicates, total.Strangers + found.Strangers);
    await SayAsync($"{what} acknowledged={driver.Acknowledged} lost={found.Lost} duplicates={found.Duplicates} strangers={found.Strangers}")
        .ConfigureAwait(false);
}

Task SayAsync(FormattableString line) => Console.Out.WriteLineAsync(line.ToString(CultureInfo.InvariantCulture));
