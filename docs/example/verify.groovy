// What the build of this example printed, when it ran with the jars just built.
assert new File(basedir, 'build.log').readLines().contains('best: 8/5 6/5')
