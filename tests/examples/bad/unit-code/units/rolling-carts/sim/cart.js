start();
